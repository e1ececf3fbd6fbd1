"""The customer's page: one file that shows a building to someone who has nothing but a browser."""
