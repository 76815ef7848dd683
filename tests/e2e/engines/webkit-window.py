#!/usr/bin/python3
"""A WebKit window under WebDriver that keeps its data in a folder.

Arguments: the folder, and a file with a script that runs in each page before the page's own.

MiniBrowser, which WebKitWebDriver starts by itself, stores nothing on the disk while it is automated: nothing would be
left after a kill. This is the same engine, WebKitGTK. It needs Debian's python3-gi and gir1.2-webkit2-4.1.
"""

import os
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402

folder, script = sys.argv[1:3]
downloads = os.path.join(folder, "downloads")

context = WebKit2.WebContext(
    website_data_manager=WebKit2.WebsiteDataManager(
        base_data_directory=os.path.join(folder, "data"),
        base_cache_directory=os.path.join(folder, "cache"),
    )
)
context.set_automation_allowed(True)

content = WebKit2.UserContentManager()
with open(script, encoding="utf-8") as source:
    content.add_script(
        WebKit2.UserScript(
            source.read(),
            WebKit2.UserContentInjectedFrames.TOP_FRAME,
            WebKit2.UserScriptInjectionTime.START,
            None,
            None,
        )
    )


def create_web_view(_session):
    view = WebKit2.WebView(web_context=context, user_content_manager=content, is_controlled_by_automation=True)
    window = Gtk.Window(default_width=800, default_height=900)
    window.add(view)
    window.show_all()
    return view


def automation_started(_context, session):
    info = WebKit2.ApplicationInfo()
    info.set_name("WebKitWindow")
    info.set_version(WebKit2.get_major_version(), WebKit2.get_minor_version(), WebKit2.get_micro_version())
    session.set_application_info(info)
    session.connect("create-web-view", create_web_view)


def unfinished(name):
    return os.path.join(downloads, name + ".part")


def decide_destination(download, name):
    # WebKit writes into the destination itself: a file of the asked name must be a complete one.
    download.set_destination("file://" + unfinished(name))
    download.connect("finished", lambda _download: os.rename(unfinished(name), os.path.join(downloads, name)))
    return True


context.connect("automation-started", automation_started)
context.connect("download-started", lambda _context, download: download.connect("decide-destination", decide_destination))
Gtk.main()
