#!/usr/bin/env bash
# Runs early in every start of a card, and puts its units in place: station-install.service, whose script (install.sh,
# beside this one) does the work, the page that tells of it, and the network. Whatever a cut power leaves of that, the next start
# puts it in place again.
set -u
here="$(cd "$(dirname "$0")" && pwd)"
root="${BENCHWARM_ROOT:-}"           # set only when it is tried in a folder that stands for the card
units="$root/etc/systemd/system"

[ -e "$root/opt/benchwarm/installed" ] && exit 0
# Put the file FILE into FOLDER, unless it lies there already: a cut power leaves it whole or under another name.
put() {
  local there
  there="$2/$(basename "$1")"
  cmp -s "$1" "$there" && return
  install -d "$2" && install -m 644 "$1" "$there.part" && sync "$there.part" && mv "$there.part" "$there"
}
put "$here/systemd/station-progress.service" "$units"
put "$here/network.py" "$root/usr/local/lib/benchwarm" && put "$here/systemd/station-network.service" "$units"
put "$here/systemd/station-install.service" "$units" || exit 1
if [ -n "$root" ]; then              # no systemd to speak to in a folder
  "${BENCHWARM_PYTHON:-python3}" -I "$root/usr/local/lib/benchwarm/network.py" "$here" "$root"
  exec bash "$here/install.sh"
fi
systemctl daemon-reload
systemctl enable --quiet station-network.service && systemctl start --no-block station-network.service
# Where the station is there already, its own page tells what is still done.
[ -x /opt/benchwarm/.venv/bin/station ] || systemctl start --no-block station-progress.service
systemctl enable --quiet station-install.service && sync && systemctl start --no-block station-install.service
