"""Old notes: tables that the grower kept before, read, understood, shown, and carried in when told to."""
