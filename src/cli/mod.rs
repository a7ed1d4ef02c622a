//! The command line: one file a command; the only place that prints or exits.
