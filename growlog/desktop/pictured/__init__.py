"""What each screen shows in its picture: opened, filled, refused."""
