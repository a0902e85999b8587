"""What opens the dialogs beside the board and writes what they confirm."""
