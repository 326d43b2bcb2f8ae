#!/usr/bin/env bash
# Installs the station from this folder, with or without a network: run by station-install.service at every start until
# the file /opt/benchwarm/installed, written last, says that it is done. The power may be cut anywhere: what is half made
# has a name that ends in .part and is thrown away; what has its own name was written out to the card before it got it.
# result.txt beside it always tells the last step, where any computer can read it.
set -u
here="$(cd "$(dirname "$0")" && pwd)"
root="${BENCHWARM_ROOT:-}"           # these are set only when it is tried in a folder that stands for the card
boot="$root${BENCHWARM_BOOT:-/boot/firmware}"
home="$root/opt/benchwarm"
log="$home/install.log"              # what the tools say
done_marker="$home/installed"
if [ -e "$done_marker" ]; then
  echo "installed already; to go through all steps again, delete $done_marker"
  exit 0
fi

# Let the file FILE.part take the place of FILE: a cut power leaves the old one or the new one, never half of it.
settle() { sync "$1.part" && mv "$1.part" "$1" && sync "$(dirname "$1")"; }
told=""
tell() { printf '%s\n' "$*"; told="$told$*"$'\n'; printf '%s' "$told" > "$here/result.txt.part" && settle "$here/result.txt"; }
fail() {
  [ -s "$log" ] && tell "$(tail -n 20 "$log")"
  tell "FAILED: $*"
  tell "it is tried again at the next start"
  exit 1
}
cannot_write="the card cannot be written"

tell "first start of $(hostname 2>/dev/null || echo this bench)"
tell "step 1 of 5: settings of the system"
install -d "$home/releases" || fail "$cannot_write"
: > "$log" || fail "$cannot_write"
service=station.service
[ -d "$here/mosquitto" ] && service=station-room.service   # the room has no probe
config="$boot/config.txt" cmdline="$boot/cmdline.txt"
restart=no
if [ "$service" = station.service ] && [ -f "$config" ]; then
  lines=""                           # what hardware.md has in config.txt, and this card has not
  grep -qE '^dtoverlay=w1-gpio' "$config" || lines="${lines}dtoverlay=w1-gpio\n"
  if grep -q '^pins = "real"' "$boot/station.toml" 2>/dev/null; then
    for line in gpio=17,22,23,27=op,dl dtparam=strict_gpiod; do grep -qxF "$line" "$config" || lines="$lines$line\n"; done
  fi
  if [ -n "$lines" ]; then
    cp "$config" "$config.part" && printf '\n[all]\n%b' "$lines" >> "$config.part" && settle "$config" || fail "$cannot_write"
    tell "probe's bus and lamps' pins: as config.txt now has them after a restart"
    restart=yes
  fi
  [ -z "$root" ] && [ ! -e /sys/bus/w1/devices/w1_bus_master1 ] && restart=yes
fi
# Without this word the kernel of a Raspberry Pi counts no memory, and the units' limits do nothing. One line, no more.
if [ -f "$cmdline" ] && ! grep -qw 'cgroup_enable=memory' "$cmdline"; then
  sed '1s/[[:space:]]*$/ cgroup_enable=memory/;1q' "$cmdline" > "$cmdline.part" && settle "$cmdline" || fail "$cannot_write"
  tell "limits of memory: in force after a restart"
  restart=yes
fi
# The network was taken before this (station-network.service); what came of it.
[ -f "$here/network-result.txt" ] && tell "$(cat "$here/network-result.txt")"
if [ -e "$here/ssh" ] && [ -z "$root" ]; then
  if systemctl enable --now ssh.service >> "$log" 2>&1; then tell "sign-in over the network (ssh): on, by key alone"
  else tell "AMBER: ssh could not be switched on"; fi
fi
install -d "$root/etc/sysusers.d" "$root/etc/tmpfiles.d" "$root/etc/udev/rules.d" "$root/etc/systemd/system" \
  && install -C -m 644 "$here/systemd/station-sysusers.conf" "$root/etc/sysusers.d/station.conf" \
  && install -C -m 644 "$here/systemd/station-tmpfiles.conf" "$root/etc/tmpfiles.d/station.conf" \
  && install -C -m 644 "$here/systemd/60-station-probe.rules" "$root/etc/udev/rules.d/" \
  && install -C -m 644 "$here"/systemd/station*.service "$here"/systemd/station*.timer \
      "$here"/systemd/station*.socket "$root/etc/systemd/system/" \
  || fail "$cannot_write"

# A release with this name is whole. Where the link leads to another one, the station was updated: that one stays.
python="${BENCHWARM_PYTHON:-python3}"
wheels="$home/wheelhouse"            # `station update` and cards for further benches take them from here
release="$home/releases/first"       # `station update` puts others beside it and moves the link (station/kit/releases.py)
if [ -x "$home/.venv/bin/station" ] || { [ -d "$release" ] && [ ! -L "$release" ]; }; then
  tell "steps 2 and 3 of 5: done before"
else
  # The wheels leave the card first, and the copies are looked at: pip is offered what their list has, and no other.
  tell "step 2 of 5: wheels"
  rm -rf "$wheels.part" && install -d "$wheels.part" || fail "$cannot_write"
  list="$here/wheelhouse/SHA256SUMS"
  [ -f "$list" ] || fail "the wheelhouse has no SHA256SUMS: copy the whole folder again"
  cp "$list" "$wheels.part/" || fail "$cannot_write"
  while read -r _ name; do
    case "$name" in */*|"") fail "the wheelhouse's SHA256SUMS is spoilt: copy the whole folder again" ;; esac
    cp "$here/wheelhouse/$name" "$wheels.part/" 2>> "$log" || fail "$name is missing: copy the whole folder wheelhouse again"
  done < "$wheels.part/SHA256SUMS"
  (cd "$wheels.part" && sha256sum --check --strict --quiet SHA256SUMS) >> "$log" 2>&1 \
    || fail "a wheel is not as SHA256SUMS has it: copy the whole folder wheelhouse again"
  sync
  rm -rf "$wheels" && mv "$wheels.part" "$wheels" || fail "$cannot_write"

  # Built in first.part. pip is called by a link with the later name, so that the paths it writes hold afterwards.
  tell "step 3 of 5: station, some minutes"
  rm -rf "$release" "$release.part" || fail "$cannot_write"
  # Without ensurepip (Debian's python3-venv) pip comes from its own wheel.
  { "$python" -m venv --system-site-packages --without-pip "$release.part" && ln -s first.part "$release" \
    && sed -i 's|first\.part|first|g' "$release"/pyvenv.cfg "$release"/bin/[Aa]ctivate*; } >> "$log" 2>&1 \
    || fail "no Python environment could be made"
  pip_wheel="$(ls "$wheels"/pip-*.whl 2>/dev/null | head -n 1)"
  [ -n "$pip_wheel" ] || fail "the wheelhouse has no pip: copy the whole folder again"
  pip() { "$release/bin/python" "$pip_wheel/pip" install --quiet --no-index "$@" >> "$log" 2>&1; }
  # shellcheck disable=SC2086 # several options
  pip ${BENCHWARM_PIP_OPTIONS:-} --find-links "$wheels" benchwarm \
    || fail "the station could not be installed; the lines above say why"
  lgpio_wheel="$(ls "$wheels"/lgpio-*.whl 2>/dev/null | head -n 1)"
  # lgpio makes a pipe when it is imported, in LG_WD: with "/" it fails, though the system has it.
  if ! (cd "$release" && LG_WD="$release" bin/python -c 'import lgpio') >> "$log" 2>&1 && [ -n "$lgpio_wheel" ]; then
    pip --no-deps "$lgpio_wheel" || tell "lgpio's wheel does not fit this system"
  fi
  rm -f "$release"/.lgd-nfy*
  sync
  rm "$release" && mv "$release.part" "$release" && sync || fail "$cannot_write"
fi
if [ ! -x "$home/.venv/bin/station" ]; then
  rm -rf "$home/.venv.part" && ln -s releases/first "$home/.venv.part" && mv -T "$home/.venv.part" "$home/.venv" && sync \
    || fail "$cannot_write"
fi
tell "installed: $("$home/.venv/bin/station" --version | head -n 1)"

waits=no
if [ "$service" = station.service ]; then
  tell "step 4 of 5: panel"
  scratch="$(mktemp -d)"
  if ! (cd "$scratch" && LG_WD="$scratch" "$home/.venv/bin/python" -c 'import lgpio') 2>/dev/null; then
    if grep -q '^pins = "real"' "$boot/station.toml"; then
      sed 's/^pins = "real"/pins = "none"/' "$boot/station.toml" > "$boot/station.toml.part" && settle "$boot/station.toml" \
        || fail "$cannot_write"
    fi
    tell "AMBER: no lgpio for this system, so lamps, buzzer and button are off; the page does everything"
  fi
  rm -rf "$scratch"
else
  # The room's broker: Debian's Mosquitto, from packages put into benchwarm/debs, or over the network.
  tell "step 4 of 5: the room's broker"
  if [ -z "$root" ] && ! command -v mosquitto >/dev/null; then
    dpkg --configure -a >> "$log" 2>&1   # what a cut power left half configured
    if ls "$here"/debs/*.deb >/dev/null 2>&1; then dpkg -i "$here"/debs/*.deb >> "$log" 2>&1
    else { apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y mosquitto; } >> "$log" 2>&1; fi
    command -v mosquitto >/dev/null || waits=yes
  fi
  etc="$root/etc/mosquitto" unit="$root/etc/systemd/system/mosquitto.service.d"
  install -d "$etc/conf.d" "$unit" \
    && install -m 644 "$here/mosquitto/service.conf" "$unit/benchwarm.conf" \
    && install -m 644 "$here/mosquitto/benchwarm.conf" "$etc/conf.d/" \
    && install -m 640 "$here/mosquitto/benchwarm.passwords" "$here/mosquitto/benchwarm.acl" "$etc/" \
    || fail "$cannot_write"
  if [ -z "$root" ] && getent group mosquitto >/dev/null; then
    chgrp mosquitto "$etc/benchwarm.passwords" "$etc/benchwarm.acl"
    { systemctl daemon-reload && systemctl enable mosquitto.service && systemctl restart mosquitto.service; } >> "$log" 2>&1
  fi
fi

tell "step 5 of 5: services"
if [ -z "$root" ]; then
  { systemd-sysusers && systemd-tmpfiles --create; udevadm control --reload && udevadm trigger --action=add --subsystem-match=w1
    systemctl daemon-reload; } >> "$log" 2>&1
  systemctl enable "$service" station-backup.timer >> "$log" 2>&1 || fail "the service could not be enabled"
  # What the bench's page may ask for and only root may do; the room's page asks for nothing.
  helper=""
  [ "$service" = station.service ] && helper=station-helper.socket && systemctl enable "$helper" >> "$log" 2>&1
  # shellcheck disable=SC2086 # none, or one
  [ "$restart" = no ] && systemctl start --no-block "$service" station-backup.timer $helper
fi
sync
if [ "$waits" = yes ]; then
  tell "AMBER: no Mosquitto, so the benches work alone: put its packages into benchwarm/debs, or connect a network, and \
restart; it is tried again at every start"
  exit 0
fi
tell "done"
echo done > "$done_marker.part" && settle "$done_marker" || fail "$cannot_write"
sync
# cloud-init has ended: the unit is ordered after it.
if [ "$restart" = yes ] && [ -z "$root" ]; then systemctl reboot --no-block; fi
exit 0
