"""What did happen: the journal and the files that leave it."""
