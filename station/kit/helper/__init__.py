"""What needs root beside a station at work, by named requests over one socket, and nothing else.

`requests.py` says what may be asked, `work.py` does it, `serve.py` is the process that systemd starts when somebody
asks (station-helper.socket: the station's user alone), `asking.py` is the station's side.
"""
