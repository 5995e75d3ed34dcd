//! Published instances whose fewest bars are known.

use super::*;

/// Plans pieces out of bars that are all alike, and holds bars and proof against what is published.
#[track_caller]
fn check(room: f64, lengths: &[u32], fewest: usize) {
    let pieces: Vec<(f64, u32)> = lengths
        .iter()
        .map(|length| (f64::from(*length), 1))
        .collect();
    check_counted(room, &pieces, fewest);
}

#[track_caller]
fn check_counted(room: f64, pieces: &[(f64, u32)], fewest: usize) {
    let plan = planned(&order(pieces), &rack(&[], &[(room, None)]));
    let stock = &plan.stocks[0];
    assert_eq!(stock.bars.len(), fewest);
    assert_eq!(stock.lower_bound, fewest, "the bound");
    assert!(stock.proven_least);
    for bar in &stock.bars {
        assert!(bar.pieces_mm() <= room, "{bar:?}");
    }
    let cut: usize = stock.bars.iter().map(|bar| bar.pieces.len()).sum();
    let wanted: u32 = pieces.iter().map(|(_, count)| count).sum();
    assert_eq!(cut, wanted as usize);
}

/// Falkenauer 1996, uniform class, `u120_00` of OR-Library's binpack1: 48 bars of 150, where first fit
/// decreasing takes more. The numbers were read in two copies of that file.
#[test]
fn a_hundred_and_twenty_pieces_of_any_length() {
    let lengths = [
        42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82,
        73, 49, 70, 59, 23, 57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32,
        25, 38, 82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36, 20, 78, 47, 26, 45, 41, 58, 98, 91,
        96, 73, 84, 37, 93, 91, 43, 73, 85, 81, 79, 71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84,
        60, 55, 49, 78, 73, 62, 36, 44, 94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98,
        60, 42, 43, 43, 39,
    ];
    check(150.0, &lengths, 48);
}

/// Falkenauer 1996, triplets, `t60_00` of OR-Library's binpack5: sixty pieces that fill 20 bars of 1000
/// to the last, three a bar.
#[test]
fn triplets_that_leave_nothing() {
    let lengths = [
        495, 474, 473, 472, 466, 450, 445, 444, 439, 430, 419, 414, 410, 395, 372, 370, 366, 366,
        366, 363, 361, 357, 355, 351, 350, 350, 347, 320, 315, 307, 303, 299, 298, 298, 292, 288,
        287, 283, 275, 275, 274, 273, 273, 272, 272, 271, 269, 269, 268, 263, 262, 261, 259, 258,
        255, 254, 252, 252, 252, 251,
    ];
    check(1000.0, &lengths, 20);
}

/// Scholl, Klein and Jürgens 1997, second set, N1W1B1R0: fifty pieces of a third of 1000 or so; their
/// length alone asks for 17 bars, and it takes 18.
#[test]
fn pieces_that_go_two_or_three_to_a_bar() {
    let lengths = [
        395, 394, 394, 391, 390, 389, 388, 384, 383, 382, 380, 379, 376, 371, 368, 365, 360, 360,
        354, 350, 346, 346, 344, 342, 340, 335, 335, 333, 330, 330, 328, 327, 317, 316, 311, 310,
        310, 306, 300, 300, 297, 296, 295, 294, 294, 286, 285, 278, 275, 275,
    ];
    check(1000.0, &lengths, 18);
}

/// Schwerin and Wäscher 1997, first set, BPP1: a hundred pieces of 150 to 200 out of 18 bars of 1000.
#[test]
fn pieces_that_are_nearly_alike() {
    let lengths = [
        200, 200, 200, 199, 198, 198, 197, 197, 194, 194, 193, 192, 191, 191, 191, 190, 190, 189,
        188, 188, 187, 187, 186, 185, 185, 185, 185, 184, 184, 184, 183, 183, 183, 182, 182, 182,
        181, 181, 180, 179, 179, 179, 179, 178, 177, 177, 177, 177, 175, 174, 173, 173, 172, 171,
        171, 171, 170, 170, 169, 169, 169, 167, 167, 165, 165, 164, 163, 163, 163, 163, 162, 161,
        160, 160, 159, 158, 158, 158, 157, 156, 156, 156, 156, 156, 156, 155, 155, 155, 154, 154,
        153, 152, 152, 152, 151, 151, 150, 150, 150, 150,
    ];
    check(1000.0, &lengths, 18);
}

/// Chvátal, *Linear Programming*, 1983, chapter 13 (from memory): 97 rolls of 45, 610 of 36, 395 of 31
/// and 211 of 14 out of rolls of 100 take 452.25 rolls where parts of them may be cut, and 453 whole
/// ones.
#[test]
fn many_pieces_of_four_lengths() {
    let pieces = [(45.0, 97), (36.0, 610), (31.0, 395), (14.0, 211)];
    check_counted(100.0, &pieces, 453);
}
