"""A job to hand to somebody: a page to read and to print, a table, a message, a sentence.

`account` gathers what a job says; `page`, `readings_table`, `summary` and `say` put it into words.
"""
