//! What a card prints, in words and dimensions, before it has a look.
