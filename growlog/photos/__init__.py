"""Pictures: reading, turning, scaling, keeping. The only place that knows pixels."""
