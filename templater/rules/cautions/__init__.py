"""What could hurt somebody, said before the drill starts: likelihoods, not surveys."""
