"""A job out to whoever needs it (report, table, message, link, codes) and in again."""
