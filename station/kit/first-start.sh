#!/usr/bin/env bash
# Runs once, at the first boot of a fresh card: installs the station from this folder, with or without a network.
# What it did and what went wrong stands in result.txt beside it, where any computer can read it.
set -u
here="$(cd "$(dirname "$0")" && pwd)"
root="${BENCHWARM_ROOT:-}"           # these are set only when it is tried in a folder that stands for the card
boot="$root${BENCHWARM_BOOT:-/boot/firmware}"
home="$root/opt/benchwarm"
log="$here/result.txt"

say() { printf '%s\n' "$*" | tee -a "$log"; }
fail() { say "FAILED: $*"; exit 1; }
: > "$log"
say "first start of $(hostname 2>/dev/null || echo this bench)"

# The bus of the probe: on after the next start.
config="$boot/config.txt"
restart=no
service=station.service
[ -d "$here/mosquitto" ] && service=station-room.service   # the room has no probe
if [ "$service" = station.service ] && [ -f "$config" ] && ! grep -qE '^dtoverlay=w1-gpio' "$config"; then
  printf '\n[all]\ndtoverlay=w1-gpio\n' >> "$config" && restart=yes && say "one-wire bus: on after a restart"
fi

install -d "$root/etc/sysusers.d" "$root/etc/tmpfiles.d" "$root/etc/udev/rules.d" "$root/etc/systemd/system" "$home" \
  || fail "the card cannot be written"
install -m 644 "$here/systemd/station-sysusers.conf" "$root/etc/sysusers.d/station.conf"
install -m 644 "$here/systemd/station-tmpfiles.conf" "$root/etc/tmpfiles.d/station.conf"
install -m 644 "$here/systemd/60-station-probe.rules" "$root/etc/udev/rules.d/"
install -m 644 "$here"/systemd/station*.service "$here"/systemd/station*.timer "$root/etc/systemd/system/"

# Without ensurepip (Debian's python3-venv) pip comes from its own wheel.
python="${BENCHWARM_PYTHON:-python3}"
release="$home/releases/first"   # `station update` puts others beside it and moves the link (station/kit/releases.py)
"$python" -m venv --system-site-packages --without-pip "$release" || fail "no Python environment could be made"
pip_wheel="$(ls "$here"/wheelhouse/pip-*.whl 2>/dev/null | head -n 1)"
[ -n "$pip_wheel" ] || fail "the wheelhouse has no pip: copy the whole folder again"
# shellcheck disable=SC2086 # several options
"$release/bin/python" "$pip_wheel/pip" install --quiet --no-index ${BENCHWARM_PIP_OPTIONS:-} --find-links "$here/wheelhouse" benchwarm \
  >> "$log" 2>&1 || fail "the station could not be installed; the lines above say why"
ln -sfn releases/first "$home/.venv" || fail "the card cannot be written"
say "installed: $("$home/.venv/bin/station" --version | head -n 1)"

if ! "$home/.venv/bin/python" -c 'import lgpio' 2>/dev/null; then
  for wheel in "$here"/wheelhouse/lgpio-*.whl; do
    [ -f "$wheel" ] && "$home/.venv/bin/python" "$pip_wheel/pip" install --quiet --no-index --no-deps "$wheel" >> "$log" 2>&1
  done
fi
if [ "$service" = station.service ] && ! "$home/.venv/bin/python" -c 'import lgpio' 2>/dev/null; then
  sed -i 's/^pins = "real"/pins = "none"/' "$boot/station.toml"
  say "AMBER: no lgpio for this system, so lamps, buzzer and button are off; the page does everything"
fi

# The room's broker: Debian's Mosquitto, from packages put into benchwarm/debs, or over the network.
if [ "$service" = station-room.service ]; then
  if [ -z "$root" ] && ! command -v mosquitto >/dev/null; then
    if ls "$here"/debs/*.deb >/dev/null 2>&1; then dpkg -i "$here"/debs/*.deb >> "$log" 2>&1
    else { apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y mosquitto; } >> "$log" 2>&1; fi
    command -v mosquitto >/dev/null || say "AMBER: no Mosquitto, so the benches work alone: put its packages into \
benchwarm/debs, or connect a network, and run: sudo bash /boot/firmware/benchwarm/first-start.sh"
  fi
  etc="$root/etc/mosquitto"
  install -d "$etc/conf.d"
  install -m 644 "$here/mosquitto/benchwarm.conf" "$etc/conf.d/"
  install -m 640 "$here/mosquitto/benchwarm.passwords" "$here/mosquitto/benchwarm.acl" "$etc/"
  if [ -z "$root" ] && getent group mosquitto >/dev/null; then
    chgrp mosquitto "$etc/benchwarm.passwords" "$etc/benchwarm.acl"
    { systemctl enable mosquitto.service && systemctl restart mosquitto.service; } >> "$log" 2>&1
  fi
  say "the room: Mosquitto's files are in place"
fi

if [ -z "$root" ]; then
  systemd-sysusers && systemd-tmpfiles --create && udevadm control --reload
  systemctl daemon-reload
  systemctl enable $service station-backup.timer >> "$log" 2>&1 || fail "the service could not be enabled"
  if [ "$restart" = no ]; then systemctl start --no-block $service station-backup.timer; fi
fi
say "done"
sync
if [ -z "$root" ] && [ "$restart" = yes ]; then systemctl reboot --no-block; fi
exit 0
