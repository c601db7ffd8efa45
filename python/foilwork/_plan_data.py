"""The shape of a plan as plain data: types alone, in the stub beside this file."""
