"""The record as a spreadsheet (.xlsx)."""
