#!/usr/bin/env bash
# On demand, as root, about 20 minutes: a kit folder's first-boot step in a Debian arm64 root of the cards' release,
# run by qemu-user, with the network cut off; then `station check --json` and a whole `station demo --once` in it.
#   sudo bash tests/kit/arm64.sh [FOLDER]     FOLDER keeps the root, and the wheel of lgpio made in it, for the next time
set -euo pipefail
cd "$(dirname "$0")/../.."
root="${1:-$(mktemp -d /var/tmp/benchwarm-arm64.XXXXXX)}"
station="${STATION:-.venv-test/bin/station}"
python="$(dirname "$station")/python"
work="$(mktemp -d)"
trap 'rm -rf "$work"; umount "$root/proc" 2>/dev/null || true' EXIT

apt-get install -y -qq --no-install-recommends debootstrap qemu-user-static >/dev/null
[ -e /proc/sys/fs/binfmt_misc/register ] || mount -t binfmt_misc binfmt_misc /proc/sys/fs/binfmt_misc
[ -e /proc/sys/fs/binfmt_misc/qemu-aarch64 ] || cat /usr/lib/binfmt.d/qemu-aarch64.conf > /proc/sys/fs/binfmt_misc/register
tools=python3,python3-venv,python3-dev,gcc,swig
[ -x "$root/usr/bin/python3" ] || debootstrap --arch=arm64 --variant=minbase --include="$tools" trixie "$root"
mountpoint -q "$root/proc" || mount -t proc proc "$root/proc"

printf 'country = "IE"\n[[kit]]\nnumber = 7\nname = "Bench in a box"\n' > "$work/kits.toml"
# In the root, with no network but the loopback.
inside() {
  unshare --net sh -c 'ip link set lo up && exec chroot "$@"' sh "$root" \
    /usr/bin/env -i PATH=/usr/bin:/bin HOME=/root LANG=C.UTF-8 "$@"
}

# lgpio has no wheel for this Python: it is made once, in the root, from its source.
wheels="$root/var/tmp/wheels"
if ! ls "$wheels"/lgpio-*.whl >/dev/null 2>&1; then
  mkdir -p "$wheels"
  PYPI=1 "$python" -m pip download --quiet --no-deps --no-binary lgpio --dest "$wheels" 'lgpio>=0.2.2'
  "$python" -m pip download --quiet --no-deps --dest "$wheels" pip setuptools
  inside bash -c 'cd /var/tmp/wheels && python3 -m venv --without-pip /var/tmp/make &&
    pip() { /var/tmp/make/bin/python "$(ls pip-*.whl)/pip" "$@"; } &&
    pip install --quiet --no-index setuptools-*.whl &&
    PYPI=1 pip wheel --quiet --no-index --no-deps --no-build-isolation lgpio-*.tar.gz'
fi

"$station" kit "$work/kits.toml" --out "$work/cards" --lgpio "$(ls "$wheels"/lgpio-*.whl)"
rm -rf "$root/boot/firmware" "$root/opt/benchwarm"
mkdir -p "$root/boot"
cp -r "$work/cards/bench-7" "$root/boot/firmware"
printf 'dtparam=audio=on\n' > "$root/boot/firmware/config.txt"

# A root of "/" instead of none: there is no systemd to speak to in here.
inside BENCHWARM_ROOT=/ bash /boot/firmware/benchwarm/first-start.sh
inside /opt/benchwarm/.venv/bin/station --version
inside /opt/benchwarm/.venv/bin/station check --config /boot/firmware/station.toml --json || echo "check: status $?"
inside /opt/benchwarm/.venv/bin/station demo --once --speed 30 --json --port 0 | tail -n 2
