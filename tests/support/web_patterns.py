"""The server's names in tests, and the patterns they ask it for."""

HOST = "127.0.0.1:29571"
LAN = "192.168.7.5:29571"
SLASH = """\
title "Mine"
loaf round width 200mm height 85mm

knob deep 8mm min 6mm max 11mm

slash 100mm depth deep
"""
