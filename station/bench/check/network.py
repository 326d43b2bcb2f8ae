"""Under which addresses other devices find the page, and whether its port is ours to take."""

import ipaddress
from urllib.parse import urlsplit

from station.bench.check.beside import ANY, Beside
from station.bench.check.finding import Finding
from station.bench.check.kit import Kit, text_of


def network(kit: Kit) -> Finding:
    """Return the page's addresses, as numbers: names are not reliable in schools."""
    reached = reachable(kit)
    values = {"addresses": list(kit.addresses), "reachable": reached}
    if any(not _self_given(each) for each in reached):
        return Finding("network", "green", f"the page: {' or '.join(reached)}", values=values)
    if reached:
        text = f"no network gave this kit an address; it took {' and '.join(reached)}"
        return Finding("network", "amber", text, "check the cable or the Wi-Fi's name and passphrase", values)
    if kit.host not in ANY:
        remedy = 'take host below [server] out of station.toml, or set "0.0.0.0"'
        return Finding(
            "network", "amber", f"server.host = {kit.host}: no other device reaches the page", remedy, values
        )
    remedy = "plug in the network cable, or join the Wi-Fi"
    if _wifi_is_off(kit):
        remedy = (
            "Wi-Fi is switched off: set its country (sudo raspi-config, Localisation), or plug in the network cable"
        )
    return Finding("network", "amber", "no network: only this machine sees the page", remedy, values)


def reachable(kit: Kit) -> list[str]:
    """Return the addresses that another device can use."""
    return [each for each in kit.addresses if not _is(each, "is_loopback")]


def _self_given(url: str) -> bool:
    return _is(url, "is_link_local")


def _is(url: str, what: str) -> bool:
    host = urlsplit(url).hostname or ""
    try:
        return bool(getattr(ipaddress.ip_address(host), what))
    except ValueError:
        return host == "localhost" and what == "is_loopback"


def _wifi_is_off(kit: Kit) -> bool:
    """Whether the kernel has Wi-Fi blocked (Documentation/ABI/stable/sysfs-class-rfkill)."""
    switches = [each for each in kit.at("sys/class/rfkill").glob("rfkill*") if text_of(each / "type") == "wlan"]
    return any("1" in (text_of(each / "soft"), text_of(each / "hard")) for each in switches)


def port(kit: Kit, beside: Beside) -> Finding:
    """Return whether the page's port is free, or served by a station."""
    values = {"port": kit.port, "taken": beside.port_taken, "bench": beside.page_bench}
    if kit.port == 0:
        text = "server.port = 0: the page's address is another one after each start"
        return Finding("port", "amber", text, "set port below [server] in station.toml, such as 8080", values)
    if beside.page_bench is not None:
        return Finding("port", "green", f"a station serves {beside.page_bench} on port {kit.port}", values=values)
    if beside.port_taken:
        remedy = "end that program, or set another port below [server] in station.toml"
        return Finding("port", "red", f"another program listens on port {kit.port}", remedy, values)
    if beside.record_pid is not None:
        text = f"a station is at work (process {beside.record_pid}), but nobody listens on port {kit.port}"
        return Finding("port", "amber", text, "restart the station: sudo systemctl restart station", values)
    return Finding("port", "green", f"port {kit.port} is free", values=values)
