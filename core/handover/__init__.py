"""A job as text: a link, or a few codes on a screen, that another device takes in.

`packing` makes events small, `parts` cuts what comes out into texts that say which part of how
many they are, `codes` draws such a text as a matrix code, and `coming` tells what taking it would
change. What is taken in is a `Parcel`, as a file gives one: there is one way into the book.
"""
