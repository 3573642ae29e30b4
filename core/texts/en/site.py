"""What the page says before the app is there, and what the site's commands say."""

TEXTS: dict[str, str] = {
    "site.name": "Standproud",
    "site.description": "Wire height, fit and sheet thickness for wire-ringed heads, offline.",
    "site.starting": "Starting …",
    "site.first_visit": "Fetching the app, so that it opens without a network from now on …",
    "site.last_answer": "Your last answer, while the app starts:",
    "site.try_again": "Try again",
    "site.trouble_start": "The app could not start. Try again; what you saved is untouched.",
    "site.trouble_files": "A part of the app could not be loaded. Look for a network and try again.",
    "site.trouble_python": (
        "The calculating part of the app could not start. Try again; what you saved is untouched."
    ),
    "site.build": "Build the app's site into a folder that any https static host can serve.",
    "site.build_out": "folder to write; it is replaced",
    "site.build_base": "path the site will stand under on its host, such as /standproud/",
    "site.building": "Building the app (once after each change) …",
    "site.built": "The site stands in {folder}.",
    "site.not_built": "{folder} holds no site: run `standproud build` first.",
    "site.overview": (
        "standproud: build the app if it is stale, and serve it on this computer.\n"
        "standproud build: build the app's site into a folder.\n"
        "standproud serve: serve a built site.\n"
        "Every other command calculates:\n"
    ),
    "site.port_taken": (
        "Port {port} is taken by another program, or cannot be used. End that program: on another "
        "port the browser would show an app without your jobs."
    ),
    "site.serve": "Serve the built site on this computer.",
    "site.serve_open": "open the browser too",
    "site.serve_port": "port to listen on; your jobs belong to the port",
    "site.serve_site": "folder of the built site",
    "site.serving": "Standproud is at {url} (end with Ctrl+C)",
}
