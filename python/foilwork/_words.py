"""The words of the choices that a plan knows: types alone, in the stub beside this file."""
