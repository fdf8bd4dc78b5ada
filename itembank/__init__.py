"""What is asked: school algebra, topics with their worked solutions, the bank, the command line."""
