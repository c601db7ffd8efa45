"""Mutation testing of the core by switches: hundreds of faults in one build, each chosen when the tests run."""
