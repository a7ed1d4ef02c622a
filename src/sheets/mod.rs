//! Sheets for printing: imposition and PDF.
