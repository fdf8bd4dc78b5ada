"""What goes out: papers, guides, moderation samples, summaries."""
