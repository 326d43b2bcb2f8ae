"""Which addresses count as one."""

import ipaddress


def network_of(address: str) -> str:
    """Return what counts as one address: of IPv6 its /64, since a device has as many in there as it likes."""
    try:
        found = ipaddress.ip_address(address)
    except ValueError:
        return address
    if isinstance(found, ipaddress.IPv4Address) or found.is_link_local:
        return str(found)
    if found.ipv4_mapped:  # of a socket that takes both
        return str(found.ipv4_mapped)
    return str(ipaddress.IPv6Network((int(found), 64), strict=False))


def is_loopback(address: str) -> bool:
    """Whether this is an address of this machine that no other can send from."""
    try:
        return ipaddress.ip_address(address).is_loopback
    except ValueError:
        return False
