"""Rigbuilder: a bench for building a fishing rig and understanding it."""

__version__ = "0.1.0"
