"""How does a bank's schema come about? The newest revision that this program knows."""

HEAD = "0003"
