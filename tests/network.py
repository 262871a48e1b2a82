"""A watch on the network: every call for it in this process is noted and refused while watched.

Python tells an audit hook of each; a hook cannot be taken away again, so it stays and sleeps.
"""

import socket
import sys
from collections.abc import Iterator
from contextlib import contextmanager

FORBIDDEN = frozenset(
    [
        "socket.connect", "socket.bind", "socket.sendto", "socket.sendmsg", "socket.getaddrinfo",
        "socket.gethostbyname", "socket.gethostbyaddr", "socket.getnameinfo", "urllib.Request",
        "http.client.connect", "ftplib.connect", "smtplib.connect",
    ]
)  # fmt: skip
_watches: list[list[str]] = []
_hooked: list[bool] = []


@contextmanager
def forbidden_network() -> Iterator[list[str]]:
    """Refuse the network meanwhile; yields what was asked for."""
    if not _hooked:
        sys.addaudithook(_hear)
        _hooked.append(True)
    asked: list[str] = []
    _watches.append(asked)
    try:
        yield asked
    finally:
        _watches.remove(asked)


def _hear(event: str, arguments: tuple[object, ...]) -> None:
    if not _watches:
        return
    is_other_socket = event == "socket.__new__" and arguments[1] != socket.AF_UNIX
    if event in FORBIDDEN or is_other_socket:
        for asked in _watches:
            asked.append(event)
        raise PermissionError(f"{event} is forbidden here")
