"""The screens of the choice of a sheet."""
