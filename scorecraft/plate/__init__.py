"""The plate to dust flour through: slots, bridges that hold it in one piece, and its edge."""
