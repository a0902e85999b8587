"""Files of air loggers: lines of time, temperature and humidity as text, in the shapes that loggers write."""
