//! The shop sheet: rivets, holes, lengths, strap sizes and masses of a seam.
