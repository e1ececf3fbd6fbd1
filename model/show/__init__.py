"""How a building is looked at."""
