"""The light programme of rooms and crops: what the lamps do on each day and how much of it arrives."""
