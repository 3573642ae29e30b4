"""The site a phone installs: built from the wheels, served with fixed headers, kept offline.

One build is one unit. `build` puts it together from `client` (the screen's engine), `runtime`
(Python in the browser), `archive` (our code and its wheels) and `pages` (the page around them);
`precache` lists every file with its hash for the service worker; `server` hands it out.
"""
