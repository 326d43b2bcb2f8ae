"""Under which addresses other devices find the page, and whether its port is ours to take."""

import ipaddress
from urllib.parse import urlsplit

from station.bench.check.finding import ANY, Beside, Finding, Kit, text_of
from station.words import join, say


def network(kit: Kit) -> Finding:
    """Return the page's addresses, as numbers: names are not reliable in schools."""
    reached = reachable(kit)
    values = {"addresses": list(kit.addresses), "reachable": reached}
    if any(not _self_given(each) for each in reached):
        text = say("check-network-page", addresses_text=join(reached, "list-or"))
        return Finding("network", "green", text, values=values)
    if reached:
        text = say("check-network-self-given", addresses_text=join(reached, "list-and"))
        return Finding("network", "amber", text, say("check-network-wifi-name"), values)
    if kit.host not in ANY:
        text = say("check-network-host", host_address=kit.host)
        return Finding("network", "amber", text, say("check-network-take-host-out"), values)
    remedy = say("check-network-wifi-off" if _wifi_is_off(kit) else "check-network-plug-in")
    return Finding("network", "amber", say("check-network-none"), remedy, values)


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
        return Finding("port", "amber", say("check-port-zero"), say("check-port-set"), values)
    if beside.page_bench is not None:
        text = say("check-port-station", bench_name=beside.page_bench, port=kit.port)
        return Finding("port", "green", text, values=values)
    if beside.port_taken:
        return Finding("port", "red", say("check-port-taken", port=kit.port), say("check-port-end-program"), values)
    if beside.record_pid is not None:
        text = say("check-port-nobody", process=beside.record_pid, port=kit.port)
        return Finding("port", "amber", text, say("check-port-restart"), values)
    return Finding("port", "green", say("check-port-free", port=kit.port), values=values)
