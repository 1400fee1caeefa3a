/*
 * seamwright: the strength of riveted joints. C header; made from bindings/c/src, do not edit.
 *
 * DESIGN AID ONLY. Local codes, the inspecting authority and licensed practice govern; old shells need inspection
 * before any rating. Many figures of the rule books are from memory (MEM): compare them with the source first.
 *
 * Conventions
 *
 *  1. Memory is the caller's. The library allocates nothing, keeps no global state and no pointer after a call; all
 *     functions are reentrant and may be called from any thread.
 *  2. A struct whose first member is struct_size is filled by its sw_<noun>_init function before use, outputs too
 *     (NULL does nothing there). A program built with an older, shorter struct keeps working: what it lacks has its
 *     default. A struct longer than the library knows is refused. Structs without struct_size are records: their layout
 *     never changes. An archive for bare metal goes with its own header: sw_joint_check and sw_joint_size take an
 *     sw_rules of full size only there.
 *  3. Functions return a status: SW_OK (0), a kind of error of the library (1 to 255), or what is wrong with the call
 *     (256 and up). Any function may give SW_BAD_POINTER, SW_BAD_STRUCT_SIZE or SW_BAD_CHOICE (a number, an id or an
 *     SW_ constant that there is not), any that takes figures SW_NOT_FINITE, SW_TOO_SMALL, SW_TOO_LARGE or SW_MISSING.
 *     What else is to be expected stands beside a function.
 *  4. Outputs come after inputs and are written only with SW_OK; on failure nothing is half-written. The last argument
 *     of most functions is an sw_error (init it once), written only on failure; NULL where it is not wanted. An output
 *     lies apart from all inputs, except that one struct may be input and output of a call.
 *  5. Texts are written to (buf, len, *needed), closed by NUL: all or nothing. *needed is the size with its NUL. NULL
 *     and 0 ask for the size. A buffer that is too short gives SW_NO_SPACE and *needed. UTF-8 throughout.
 *  6. Arrays are written to (array, capacity, *count) in the same way. Arrays given to the library are (array, count),
 *     NULL and 0 an empty one, at most 4096 elements, columns of a sweep of any length; what stands behind pointers in
 *     a struct is read only, but for the places of results in sw_sweep_results.
 *  7. Texts given to the library are closed by NUL, UTF-8, at most 4095 bytes.
 *  8. Names are sw_<noun>_<verb>. Members carry their unit: pitch_mm, tension_mpa, strength_n. Efficiencies are
 *     fractions of one. Strengths are on the footing of the stresses that go in: permissible or ultimate.
 *  9. In inputs 0 means "not given" for what may be left out. In outputs "not a number" means "there is none". A NaN
 *     in an input is an error (SW_NOT_FINITE).
 * 10. A rule of the book that is not met is no error but a finding. An error means that nothing was computed.
 */

#ifndef SEAMWRIGHT_H
#define SEAMWRIGHT_H

#include <stddef.h>
#include <stdint.h>

// Version of the header: major. The number in the name of the shared library.
#define SW_VERSION_MAJOR 0

// Version of the header: minor.
#define SW_VERSION_MINOR 1

// Version of the header: patch.
#define SW_VERSION_PATCH 0

// All went well. Other statuses below 256 are kinds of errors of the library, from 256 on they concern the call.
#define SW_OK 0

// A number is not finite.
#define SW_NOT_FINITE 1

// A value is below the least value allowed.
#define SW_TOO_SMALL 2

// A value is above the greatest value allowed.
#define SW_TOO_LARGE 3

// A value is needed here and was not given.
#define SW_MISSING 4

// A value does not belong to this form of joint.
#define SW_NOT_FOR_THIS_FORM 5

// A value contradicts the form of the joint or another input.
#define SW_INCONSISTENT 6

// The holes of a row fill the pitch.
#define SW_HOLES_FILL_PITCH 7

// Holes of neighbouring rows overlap.
#define SW_ROWS_OVERLAP 8

// A hole cuts the plate edge.
#define SW_HOLE_CUTS_EDGE 9

// A rivet is greater than its hole.
#define SW_RIVET_EXCEEDS_HOLE 10

// A value lies outside a table of the rule book.
#define SW_BEYOND_TABLE 11

// A hole is above the largest size of the series.
#define SW_NO_STANDARD_SIZE 12

// No pitch lies between the least and the greatest pitch of the rule book.
#define SW_NO_ADMISSIBLE_PITCH 13

// No margin lies between the least and the greatest margin of the rule book.
#define SW_NO_ADMISSIBLE_MARGIN 14

// There is no entry, no input or no quantity of this key or symbol.
#define SW_UNKNOWN_KEY 15

// A value is not one of the choices of its entry.
#define SW_WRONG_CHOICE 16

// A text cannot be read as a number, or has no unit where one is needed.
#define SW_UNREADABLE 17

// A buffer or an array is too short; the size needed was written, nothing else. `value` of the error is the size that
// there is, `limit` the one needed.
#define SW_NO_SPACE 18

// The rule book contradicts itself.
#define SW_BOOK_UNSOUND 19

// No problem could be made in which the wanted effect decides.
#define SW_NO_PROBLEM 20

// The holes of two rivets of a group overlap.
#define SW_HOLES_OVERLAP 21

// One rivet alone cannot hold a moment.
#define SW_RIVET_TURNS 22

// A pointer is NULL or not aligned; `index` of the error is the number of the argument, from 1.
#define SW_BAD_POINTER 256

// `struct_size` is not one that this library knows; `index` of the error is the number of the argument.
#define SW_BAD_STRUCT_SIZE 257

// A text is not UTF-8, or longer than 4095 bytes; `index` of the error is the number of the argument.
#define SW_BAD_TEXT 258

// A number or an id is none of those that there are; `index` of the error is the number of the argument.
#define SW_BAD_CHOICE 259

// There are no more elements, or there is nothing to tell of.
#define SW_END 260

// A working or a sheet could not be written completely and was refused.
#define SW_INCOMPLETE 261

// An array has more elements than the library takes (4096 where nothing else is said).
#define SW_TOO_MANY 262

// "No entry": the matter does not come from a rule book.
#define SW_NO_ENTRY 65535

// "No field": the error concerns the call and no value.
#define SW_NO_FIELD 4294967295

// Millimetres.
#define SW_LENGTH_MM 0

// Inches of exactly 25.4 mm.
#define SW_LENGTH_INCH 1

// Metres.
#define SW_LENGTH_M 2

// Feet of twelve inches.
#define SW_LENGTH_FOOT 3

// Square millimetres.
#define SW_AREA_MM2 0

// Square inches.
#define SW_AREA_INCH2 1

// Square metres.
#define SW_AREA_M2 2

// Newtons.
#define SW_FORCE_N 0

// Kilonewtons.
#define SW_FORCE_KN 1

// Pounds-force.
#define SW_FORCE_LBF 2

// Kilograms-force.
#define SW_FORCE_KGF 3

// Long tons-force of 2240 lb.
#define SW_FORCE_LONG_TON 4

// Newton-millimetres.
#define SW_MOMENT_NMM 0

// Newton-metres.
#define SW_MOMENT_NM 1

// Kilonewton-metres.
#define SW_MOMENT_KNM 2

// Pound-force-inches.
#define SW_MOMENT_LBF_INCH 3

// Megapascals, or newtons per square millimetre.
#define SW_STRESS_MPA 0

// Pounds per square inch.
#define SW_STRESS_PSI 1

// Thousands of pounds per square inch.
#define SW_STRESS_KSI 2

// Kilograms-force per square centimetre.
#define SW_STRESS_KGF_CM2 3

// Kilograms-force per square millimetre.
#define SW_STRESS_KGF_MM2 4

// Long tons per square inch.
#define SW_STRESS_LONG_TON_IN2 5

// Megapascals.
#define SW_PRESSURE_MPA 0

// Bars.
#define SW_PRESSURE_BAR 1

// Pounds per square inch.
#define SW_PRESSURE_PSI 2

// Kilograms-force per square centimetre.
#define SW_PRESSURE_KGF_CM2 3

// Number of entries of a rule book.
#define SW_RULE_ENTRIES 256

// A book that stands for itself: the user's own.
#define SW_BOOK_OWN 0

// An entry holds a number with a unit.
#define SW_ENTRY_NUMBER 0

// An entry holds 0 or 1.
#define SW_ENTRY_SWITCH 1

// An entry holds the number of one of several ways, from 0.
#define SW_ENTRY_CHOICE 2

// Mild steel.
#define SW_METAL_STEEL 0

// Wrought iron.
#define SW_METAL_IRON 1

// Greatest number of rows on one side of a joint.
#define SW_MAX_ROWS 8

// One plate laid over the other.
#define SW_LAP 0

// Plates butted, one strap.
#define SW_SINGLE_STRAP 1

// Plates butted, a strap on each side.
#define SW_DOUBLE_STRAP 2

// Rows behind each other.
#define SW_CHAIN 0

// Rows in the gaps of each other.
#define SW_ZIGZAG 1

// The rivets of a row hold.
#define SW_FATE_WHOLE 0

// The rivets of a row shear.
#define SW_FATE_SHEAR 1

// The rivets of a row crush the plate (plate A).
#define SW_FATE_BEARING 2

// The rivets of a row crush the straps or plate B.
#define SW_FATE_OTHER_BEARING 3

// The rivets of a row shear in one plane and crush a strap in the other.
#define SW_FATE_MIXED 4

// The rivets of a row shear out the plate at the margin.
#define SW_FATE_SHEAR_OUT 5

// The rivets of a row shear out the straps or plate B.
#define SW_FATE_OTHER_SHEAR_OUT 6

// The rule is not met: judge and decide.
#define SW_VERDICT_OPEN 0

// Too little is known to say.
#define SW_VERDICT_UNKNOWN 1

// A note to whoever signs.
#define SW_VERDICT_NOTE 2

// The rule is met.
#define SW_VERDICT_MET 3

// At least the required value is asked for.
#define SW_AT_LEAST 0

// At most the required value is asked for.
#define SW_AT_MOST 1

// Most findings that a check has.
#define SW_MAX_FINDINGS 64

// The hole was given.
#define SW_HOLE_GIVEN 0

// The hole follows from the square-root rule.
#define SW_HOLE_ROOT 1

// Shear equals bearing: the plate is thin.
#define SW_HOLE_THIN 2

// The hole follows from the book's table by thickness.
#define SW_HOLE_TABLE 3

// The pitch was given.
#define SW_PITCH_GIVEN 0

// The pitch follows from the balance.
#define SW_PITCH_BALANCE 1

// The pitch follows from the least pitch.
#define SW_PITCH_FLOOR 2

// The pitch follows from the greatest pitch.
#define SW_PITCH_CAP 3

// Balance of the outer row against the rivets in shear.
#define SW_BALANCE_SHEAR 0

// Balance of the outer row against the weaker of shear and bearing.
#define SW_BALANCE_WEAKER 1

// Balance of all plate modes against the rivets.
#define SW_BALANCE_ALL_MODES 2

// Millimetres, newtons, megapascals.
#define SW_UNITS_METRIC 0

// Inches, pounds-force, pounds per square inch.
#define SW_UNITS_INCH 1

// A decimal point.
#define SW_MARK_POINT 0

// A decimal comma.
#define SW_MARK_COMMA 1

// Forces of a metric text in newtons.
#define SW_FORCES_NEWTON 0

// Forces of a metric text in kilonewtons.
#define SW_FORCES_KILONEWTON 1

// As many decimals as are usual for the quantity and its unit.
#define SW_DECIMALS_USUAL 4294967295

// Plain text of 80 columns.
#define SW_DIALECT_PLAIN 0

// Plain text of 20 columns.
#define SW_DIALECT_NARROW 1

// Markdown.
#define SW_DIALECT_MARKDOWN 2

// LaTeX.
#define SW_DIALECT_LATEX 3

// HTML.
#define SW_DIALECT_HTML 4

// A straight seam.
#define SW_RUN_STRAIGHT 0

// A seam round a ring.
#define SW_RUN_GIRTH 1

// A tie: one strip.
#define SW_RUN_TIE 2

// The diameter is that of the circle of the seam.
#define SW_MEASURED_CIRCLE 0

// The diameter is the inside of the ring of the plate (plate A).
#define SW_MEASURED_INSIDE_PLATE 1

// The diameter is the inside of the ring of plate B of a lap.
#define SW_MEASURED_INSIDE_OTHER 2

// The other plate or the wide strap lies inside.
#define SW_FACE_INSIDE 0

// The other plate or the wide strap lies outside.
#define SW_FACE_OUTSIDE 1

// Rounded down.
#define SW_ROUND_DOWN 0

// Rounded to the nearest.
#define SW_ROUND_NEAREST 1

// Rounded up.
#define SW_ROUND_UP 2

// The pitch was fitted to a tie: one strip.
#define SW_FITTED_TIE 0

// The pitch divides the run already.
#define SW_FITTED_WHOLE 1

// The nearer whole number of pitches was taken.
#define SW_FITTED_NEARER 2

// The other number was taken, because of the greatest pitch.
#define SW_FITTED_CAP 3

// The other number was taken, because of the least pitch.
#define SW_FITTED_FLOOR 4

// A hole of a lap.
#define SW_SIDE_LAP 0

// A hole left of the butt.
#define SW_SIDE_LEFT 1

// A hole right of the butt.
#define SW_SIDE_RIGHT 2

// A piece of a seam.
#define SW_EXTENT_SEAM 0

// The whole width of a tie.
#define SW_EXTENT_TIE 1

// Measured on the boiler.
#define SW_BASIS_MEASURED 0

// Stated by the user: from a drawing, a certificate, a stamp.
#define SW_BASIS_GIVEN 1

// Taken from the rule book because it is not known.
#define SW_BASIS_TABULATED 2

// Not stated: taken on the safe side, or as the sheet says.
#define SW_BASIS_ASSUMED 3

// Most assumptions of one result.
#define SW_MAX_ASSUMPTIONS 48

// The stresses are permissible: the safety is in them.
#define SW_FOOTING_PERMISSIBLE 0

// The stresses are strengths at failure: a factor of safety divides them.
#define SW_FOOTING_ULTIMATE 1

// A circumstance is not stated: it is taken on the safe side where the book distinguishes it, and listed as assumed.
#define SW_NOT_STATED 0

// A circumstance holds.
#define SW_YES 1

// A circumstance does not hold.
#define SW_NO 2

// Rivets closed by hand.
#define SW_RIVETED_BY_HAND 1

// Rivets closed by machine.
#define SW_RIVETED_BY_MACHINE 2

// Holes drilled.
#define SW_HOLES_DRILLED 1

// Holes punched small and reamed.
#define SW_HOLES_REAMED 2

// Holes punched to size.
#define SW_HOLES_PUNCHED 3

// The factor of safety was given by the user.
#define SW_FACTOR_GIVEN 0

// The factor of safety is the rule book's.
#define SW_FACTOR_BOOK 1

// The factor of safety is in the constant of the book's formula; the figure is that constant.
#define SW_FACTOR_CONSTANT 2

// The factor of safety is in the permissible stresses.
#define SW_FACTOR_IN_STRESSES 3

// The metal is not stated: strengths are given, or nothing is rated.
#define SW_METAL_NOT_STATED 4294967295

// Bit of `sw_existing.measured`: the pitch was measured.
#define SW_BY_MEASURE_PITCH 1

// Bit of `sw_existing.measured`: the plate at the seam was measured.
#define SW_BY_MEASURE_PLATE 2

// Bit of `sw_existing.measured`: the second plate of a lap was measured.
#define SW_BY_MEASURE_OTHER_PLATE 4

// Bit of `sw_existing.measured`: the single, wide or first strap was measured.
#define SW_BY_MEASURE_WIDE_STRAP 8

// Bit of `sw_existing.measured`: the narrow or second strap was measured.
#define SW_BY_MEASURE_NARROW_STRAP 16

// Bit of `sw_existing.measured`: the shell plate away from the seam was measured.
#define SW_BY_MEASURE_SHELL_PLATE 32

// Bits of `sw_existing.measured`: the driven rivets of all rows were measured; row n alone is bit 7 + n.
#define SW_BY_MEASURE_HOLES 65280

// The seam governs, in its weakest mode.
#define SW_GOVERNS_SEAM 0

// The solid plate away from the seam governs.
#define SW_GOVERNS_PLATE 1

// A limit of the book on shells with laps governs.
#define SW_GOVERNS_RULE 2

// How many of the best a search returns, each of another form.
#define SW_MAX_BEST 5

// No measure: it is the best itself.
#define SW_MEASURE_NONE 4294967295

// Efficiency credited.
#define SW_MEASURE_EFFICIENCY 0

// Rivets in a metre.
#define SW_MEASURE_RIVETS 1

// Mass of a metre.
#define SW_MEASURE_MASS 2

// Plate.
#define SW_MEASURE_PLATE 3

// Pitch: the larger one is taken.
#define SW_MEASURE_PITCH 4

// Equal in all: the earlier in the order of plates, forms and sizes is taken.
#define SW_MEASURE_ORDER 5

// A step of the pitch further lies beyond the least or greatest pitch.
#define SW_BESIDE_OFF_GRID 0

// A step of the pitch further a constraint is not met; its number stands beside.
#define SW_BESIDE_EXCLUDED 1

// A step of the pitch further the joint is worse; the number of the first measure in which it is stands beside.
#define SW_BESIDE_WORSE 2

// The constraint that a rule be met has this number plus that of the finding's subject; below are the others.
#define SW_CONSTRAINT_RULE 16

// Room for the counts of all constraints.
#define SW_MAX_CONSTRAINTS 80

// The highest efficiency that may be credited.
#define SW_OBJECTIVE_EFFICIENCY 0

// The least mass that a metre of seam adds.
#define SW_OBJECTIVE_MASS 1

// The fewest rivets in a metre of seam.
#define SW_OBJECTIVE_RIVETS 2

// The thinnest plate.
#define SW_OBJECTIVE_THICKNESS 3

// Most forms that a search is given.
#define SW_MAX_FORMS 64

// A girth seam between two rings.
#define SW_GIRTH_MIDDLE 0

// A girth seam at an end plate.
#define SW_GIRTH_END 1

// A girth seam at an end plate, or between rings, of a shell whose heads tubes or through stays carry.
#define SW_GIRTH_STAYED 2

// A course of the shell, with its seam along it.
#define SW_PART_COURSE 0

// A girth seam.
#define SW_PART_GIRTH 1

// A head, computed elsewhere.
#define SW_PART_HEAD 2

// Tubes, computed elsewhere.
#define SW_PART_TUBES 3

// Stays, computed elsewhere.
#define SW_PART_STAYS 4

// A furnace or firebox, computed elsewhere.
#define SW_PART_FURNACE 5

// Anything else, computed elsewhere.
#define SW_PART_OTHER 6

// Most lines of a boiler's table.
#define SW_MAX_LINES 32

// The most rivets of a group.
#define SW_MAX_GROUP 32

// Shear of a rivet limits the group.
#define SW_GROUP_SHEAR 0

// Bearing of the plate limits the group.
#define SW_GROUP_BEARING 1

// Most figures of one case.
#define SW_MAX_FIGURES 24

// Most explanations that reproduce the figures, and most that may be chance.
#define SW_MAX_EXPLANATIONS 8

// No convention.
#define SW_NO_CONVENTION 4294967295

// The plate tears at its outer row.
#define SW_EFFECT_TEARING 0

// All rivets shear.
#define SW_EFFECT_SHEARING 1

// All rivets crush the plate.
#define SW_EFFECT_BEARING 2

// A plate tears at an inner row while the rivets outside it fail.
#define SW_EFFECT_COMBINED 3

// The greatest pitch of the rule book decides the pitch.
#define SW_EFFECT_CAP 4

// The plate is thin: the hole follows from shear and bearing.
#define SW_EFFECT_THIN_PLATE 5

// A boiler: permissible stresses low, for a seam that has to stay tight.
#define SW_SETTING_BOILER 0

// A structure.
#define SW_SETTING_STRUCTURE 1

// The joint is given: find its strengths and its efficiency.
#define SW_TASK_CHECK 0

// The plate and its stresses are given: find the joint.
#define SW_TASK_SIZE 1

// A sheet for the class: the exercises alone.
#define SW_FOR_CLASS 0

// A sheet for the teacher: the exercises and their answers.
#define SW_FOR_TEACHER 1

// Right within the digits that are given.
#define SW_MARK_RIGHT 0

// Right after an earlier slip of the student's own: to be credited.
#define SW_MARK_CARRIED_OVER 1

// Wrong by a slip or habit that is known.
#define SW_MARK_SLIP 2

// Wrong, and not explained.
#define SW_MARK_WRONG 3

// Not answered.
#define SW_MARK_MISSING 4

// Most figures that an exercise asks for.
#define SW_MAX_ASKED 34

// The efficiency over all modes is to be at its worst.
#define SW_TARGET_EFFICIENCY 0

// The efficiency by the book is to be at its worst.
#define SW_TARGET_BOOK_EFFICIENCY 1

// The strength for a millimetre of seam is to be at its worst: what a shell's pressure follows.
#define SW_TARGET_STRENGTH 2

// Most inputs of one study.
#define SW_MAX_INPUTS 48

// Dimensions that have a tolerance: plate, other plate or wide strap, narrow strap, hole, pitch.
#define SW_TOLERANCES 5

// Most columns of one comparison.
#define SW_MAX_COLUMNS 16

// In the order given.
#define SW_SORT_GIVEN 0

// By efficiency credited, the highest first.
#define SW_SORT_CREDITED 1

// By efficiency over all modes, the highest first.
#define SW_SORT_EFFICIENCY 2

// By working pressure, the highest first.
#define SW_SORT_PRESSURE 3

// By pitch, the largest first.
#define SW_SORT_PITCH 4

// By hole, the smallest first.
#define SW_SORT_HOLE 5

// By rules that are not met, the fewest first.
#define SW_SORT_OPEN 6

// Most letters of a joint.
#define SW_MAX_LETTERS 20

// It is not said whether the stresses are permissible ones or those at failure.
#define SW_FOOTING_NOT_SAID 4294967295

// Most inputs of which one sheet says how they are known.
#define SW_MAX_KNOWN 64

// In the place of a mode's number: this row has none, because it could not be computed.
#define SW_NO_MODE 65535

// A built-in book with its words, where it stands in the library: read it, never make or copy one.
typedef struct sw_book sw_book;

// Why a function failed. Texts: `sw_error_message`, `sw_error_field`, `sw_error_clause`.
typedef struct sw_error {
  // Size of this struct, set by `sw_error_init`.
  uint32_t struct_size;
  // The status that the function returned.
  uint32_t status;
  // Number of the field at fault (see `sw_error_field`), `SW_NO_FIELD` where the call itself was wrong.
  uint32_t field;
  // Number of the row, line or argument, from 1; 0 when there is none.
  uint32_t index;
  // Entry of the rule book that set the limit; `SW_NO_ENTRY` when there is none.
  uint32_t entry;
  // A second entry, where two rules contradict each other; `SW_NO_ENTRY` when there is none.
  uint32_t other_entry;
  // Number of the field that the hint is about; counts where `hint` is a number.
  uint32_t hint_field;
  // Not used.
  uint32_t reserved;
  // The value at fault in the unit of its field (mm, MPa, N, 1); not a number when there is none.
  double value;
  // The limit that it passed; not a number when there is none.
  double limit;
  // A value of the hint's field that would do; not a number when none is known.
  double hint;
} sw_error;

// The numbers of a rule book. A copy of a built-in book, or all of your own.
typedef struct sw_rules {
  // Size of this struct, set by `sw_rules_init` and `sw_rules_find`.
  uint32_t struct_size;
  // The built-in book that clauses are quoted from, from 1; `SW_BOOK_OWN` for a book of your own.
  uint32_t book;
  // The values by entry, in mm, MPa or 1. Change them by `sw_rules_set`, or in place.
  double value[SW_RULE_ENTRIES];
} sw_rules;

// What the table of entries says of one entry. Texts: `sw_entry_key`, `sw_entry_what`, `sw_entry_choice`.
typedef struct sw_entry_info {
  // Size of this struct, set by `sw_entry_info_init`.
  uint32_t struct_size;
  // `SW_ENTRY_NUMBER`, `SW_ENTRY_SWITCH` or `SW_ENTRY_CHOICE`.
  uint32_t kind;
  // Line of the list, from 1; 0 for a single value.
  uint32_t line;
  // Number of the ways of a choice; 0 otherwise.
  uint32_t choices;
  // Least value.
  double least;
  // Greatest value.
  double greatest;
  // The value of a book that is silent on the matter.
  double neutral;
} sw_entry_info;

// Stresses of a joint, permissible or ultimate. A record: filled by `sw_materials_init`, then field by field.
typedef struct sw_materials {
  // Tensile stress of the plate, MPa.
  double tension_mpa;
  // Shear stress of the rivets, single shear, MPa.
  double rivet_shear_mpa;
  // Bearing stress of the plate, MPa; 0: not given.
  double bearing_mpa;
  // Shear stress of the plate for shear-out at the margin, MPa; 0: not given, the margin is left to its rule.
  double shear_out_mpa;
  // Tensile stress of the second plate or of the straps, MPa; 0: all three stresses there are as of the plate.
  double other_tension_mpa;
  // Bearing stress there, MPa; 0: not given. Counts only where `other_tension_mpa` is given.
  double other_bearing_mpa;
  // Shear stress there for shear-out, MPa; 0: not given. Counts only where `other_tension_mpa` is given.
  double other_shear_out_mpa;
} sw_materials;

// The form of a joint. A record: filled by `sw_form_lap` and its like, or field by field.
typedef struct sw_form {
  // `SW_LAP`, `SW_SINGLE_STRAP` or `SW_DOUBLE_STRAP`.
  uint32_t kind;
  // `SW_CHAIN` or `SW_ZIGZAG`.
  uint32_t arrangement;
  // Number of rows, 1 to 8, on one side of the butt.
  uint32_t row_count;
  // Not used.
  uint32_t reserved;
  // Rivets of each row in the strip, outside first, 1 to 60.
  uint32_t rivets[SW_MAX_ROWS];
  // Shear planes of the rivets of each row: 1, or 2 through both straps.
  uint32_t planes[SW_MAX_ROWS];
} sw_form;

// A joint as stated: required dimensions, and the others as they are known (0: not given).
typedef struct sw_joint {
  // Size of this struct, set by `sw_joint_init`.
  uint32_t struct_size;
  // Not used.
  uint32_t reserved;
  // The form.
  struct sw_form form;
  // Pitch of the outer row, mm; the width of the strip where the outer row has several rivets in it (a tie).
  double pitch_mm;
  // Thickness of the plate (plate A of a lap), mm.
  double plate_mm;
  // Thickness of plate B of a lap, mm; 0: as plate A.
  double other_plate_mm;
  // Thickness of the single or the wide strap, mm.
  double wide_strap_mm;
  // Thickness of the second or narrow strap, mm; 0 under a double-strapped joint: as the first one.
  double narrow_strap_mm;
  // Centre of the edge row to the plate edge, mm.
  double margin_mm;
  // Hole of each row, mm; 0 in rows 2 to 8: hole and rivet as in row 1.
  double hole_mm[SW_MAX_ROWS];
  // Cold rivet of each row, mm; 0: as large as its hole.
  double rivet_mm[SW_MAX_ROWS];
  // Distance from each row to the next, mm.
  double back_pitch_mm[SW_MAX_ROWS];
} sw_joint;

// One way in which a joint fails. A record. Name: `sw_mode_name`.
typedef struct sw_mode {
  // Row at which the plate (plate A) tears, from 1; 0: it does not.
  uint32_t plate_row;
  // Row at which plate B or the single, wide or first strap tears; 0: it does not.
  uint32_t other_row;
  // Row at which the narrow or second strap tears; 0: it does not.
  uint32_t narrow_row;
  // 1 where a torn section follows the zig-zag; otherwise 0.
  uint32_t zigzag;
  // What the rivets of each row do: `SW_FATE_*`.
  uint32_t fate[SW_MAX_ROWS];
  // Strength of the strip in this mode, N.
  double strength_n;
} sw_mode;

// What a check finds, for one strip of the joint. Strengths are on the footing of the stresses that went in.
typedef struct sw_analysis {
  // Size of this struct, set by `sw_analysis_init`.
  uint32_t struct_size;
  // Number of findings.
  uint32_t findings;
  // Number of findings that are open: rules not met.
  uint32_t open;
  // 1 where there were more findings than the library keeps; otherwise 0.
  uint32_t findings_lost;
  // Strength of the solid strip, N.
  double solid_n;
  // Tearing at the outer row, N.
  double tear_outer_n;
  // All rivets in shear, N.
  double shear_all_n;
  // All rivets in bearing, N; not a number without a bearing stress.
  double bearing_all_n;
  // The weakest mode.
  struct sw_mode governing;
  // The next one.
  struct sw_mode runner_up;
  // The weakest mode that the rule book counts.
  struct sw_mode by_book;
  // Strength of the next mode over that of the weakest.
  double runner_up_ratio;
  // Least of all modes over the solid strip.
  double efficiency;
  // Least of the modes that the book counts over the solid strip.
  double book_efficiency;
  // The efficiency that may be credited: the lesser of both, capped by the book.
  double credited_efficiency;
  // Plate percentage of the British and Indian rules, as a fraction of one.
  double plate_percentage;
  // Rivet percentage, as a fraction of one.
  double rivet_percentage;
  // Combined percentage, as a fraction of one; not a number where the rules have none.
  double combined_percentage;
} sw_analysis;

// A rule of the book, what it requires and what is there. A record. Texts: `sw_finding_what`, `sw_finding_advice`.
typedef struct sw_finding {
  // Number of the subject, for `sw_finding_what`, `sw_finding_advice`, `sw_finding_unit`.
  uint32_t subject;
  // Row that it concerns, from 1, or rivet of a group; 0 for the whole joint.
  uint32_t row;
  // Entry of the rule book, or `SW_NO_ENTRY`.
  uint32_t entry;
  // `SW_AT_LEAST` or `SW_AT_MOST`.
  uint32_t sense;
  // `SW_VERDICT_*`.
  uint32_t verdict;
  // Not used.
  uint32_t reserved;
  // What is required, in the unit of the subject (mm, N or 1); not a number where nothing is.
  double required;
  // What is there; not a number where that is not known.
  double provided;
} sw_finding;

// What a joint is to be sized from; what is 0 is found by the rule book.
typedef struct sw_brief {
  // Size of this struct, set by `sw_brief_init`.
  uint32_t struct_size;
  // Not used.
  uint32_t reserved;
  // The form.
  struct sw_form form;
  // The stresses.
  struct sw_materials materials;
  // Thickness of the plate (plate A of a lap), mm.
  double plate_mm;
  // Thickness of plate B of a lap, mm; 0: as plate A.
  double other_plate_mm;
  // Hole, mm; 0: by the book.
  double hole_mm;
  // Cold rivet for a given hole, mm; 0: by the book. Counts only where `hole_mm` is given.
  double rivet_mm;
  // Pitch of the outer row, or width of the strip, mm; 0: by the book.
  double pitch_mm;
  // Single or wide strap, mm; 0: by the book.
  double wide_strap_mm;
  // Narrow or second strap, mm; 0: as the wide one where that is given, otherwise by the book.
  double narrow_strap_mm;
  // Margin, mm; 0: by the book.
  double margin_mm;
  // Distance from each row to the next, mm; 0: by the book.
  double back_pitch_mm[SW_MAX_ROWS];
} sw_brief;

// How a design came about: what the book asked for, before rounding.
typedef struct sw_design {
  // Size of this struct, set by `sw_design_init`.
  uint32_t struct_size;
  // `SW_HOLE_*`.
  uint32_t hole_basis;
  // `SW_PITCH_*`: what decided the pitch.
  uint32_t pitch_decided;
  // `SW_BALANCE_*`: the balance that the book takes.
  uint32_t pitch_balance;
  // Entry that sets the greatest pitch; `SW_NO_ENTRY` where the book has none.
  uint32_t pitch_greatest_entry;
  // Entry that sets the least single, wide or first strap; `SW_NO_ENTRY`: none.
  uint32_t wide_strap_entry;
  // Entry that sets the least narrow or second strap; `SW_NO_ENTRY`: none.
  uint32_t narrow_strap_entry;
  // Not used.
  uint32_t reserved;
  // Hole before it became a standard size, mm; not a number where it was given.
  double hole_computed_mm;
  // Hole taken, mm.
  double hole_mm;
  // Cold rivet taken, mm.
  double rivet_mm;
  // Pitch at which the outer row balances all rivets in shear, mm.
  double pitch_by_shear_mm;
  // Pitch at which the outer row balances the weaker of shear and bearing, mm.
  double pitch_by_weaker_mm;
  // Pitch from which no plate mode is weaker than the rivets, mm.
  double pitch_by_all_modes_mm;
  // Least pitch, mm.
  double pitch_least_mm;
  // Greatest pitch, mm; not a number where the book has none or its table does not reach.
  double pitch_greatest_mm;
  // Pitch taken, mm.
  double pitch_mm;
  // Least margin, mm.
  double margin_least_mm;
  // Least single, wide or first strap, mm; not a number: none.
  double wide_strap_least_mm;
  // Least narrow or second strap, mm; not a number: none.
  double narrow_strap_least_mm;
  // Least distance from each row to the next, mm.
  double back_pitch_least_mm[SW_MAX_ROWS];
  // Entry that sets each of them; `SW_NO_ENTRY`: none.
  uint32_t back_pitch_entry[SW_MAX_ROWS];
  // Distance from each row to the next that its heads, 1.6 rivets wide, need beside the edge of the narrow strap, mm
  // (common practice); not a number where that edge lies elsewhere or the distance was given.
  double heads_at_strap_mm[SW_MAX_ROWS];
  // Distance at which the heads of the two rows touch, mm (common practice); 0 where they lie far enough across, not a
  // number where the rows have no such rule or the distance was given.
  double heads_of_rows_mm[SW_MAX_ROWS];
} sw_design;

// How a text is written. A NULL in its place means all defaults.
typedef struct sw_style {
  // Size of this struct, set by `sw_style_init`.
  uint32_t struct_size;
  // `SW_UNITS_*`.
  uint32_t units;
  // `SW_MARK_*`.
  uint32_t mark;
  // `SW_DIALECT_*`; the shop sheet knows plain and Markdown.
  uint32_t dialect;
  // Decimals more (or fewer) than usual, -9 to 9.
  int32_t extra_digits;
  // First hole of the shop sheet's table, from 1.
  uint32_t first_hole;
  // How many holes that table lists at most.
  uint32_t hole_count;
  // `SW_FORCES_*`: what forces are printed in where the units are metric.
  uint32_t forces;
  // Decimals of lengths, 0 to 9, or `SW_DECIMALS_USUAL`; `extra_digits` comes on top of it, here and below.
  uint32_t length_decimals;
  // Decimals of stresses and pressures, in the same way.
  uint32_t stress_decimals;
  // Decimals of forces, in the same way.
  uint32_t force_decimals;
  // Decimals of ratios, constants and percentages, in the same way.
  uint32_t ratio_decimals;
} sw_style;

// What a shop is asked for.
typedef struct sw_order {
  // Size of this struct, set by `sw_order_init`.
  uint32_t struct_size;
  // `SW_RUN_*`.
  uint32_t run;
  // `SW_MEASURED_*`, for a girth.
  uint32_t measured;
  // `SW_FACE_*`, for a girth.
  uint32_t face;
  // Number of the closing head, from 0 (`sw_head_name`).
  uint32_t head;
  // Number of the set head, from 0.
  uint32_t set_head;
  // Number of the rule for rivet lengths, from 0 (`sw_length_rule_name`).
  uint32_t length_rule;
  // `SW_ROUND_*`: how lengths are brought to the step of the stock.
  uint32_t stock_rounding;
  // Length of a straight seam, mm.
  double length_mm;
  // First hole to the end of the plate, mm.
  double first_end_mm;
  // Last hole to the end of the plate, mm.
  double last_end_mm;
  // Diameter of a girth, mm.
  double diameter_mm;
  // Step of rivet lengths in stock, mm; 0: cut to length.
  double stock_step_mm;
  // Density, kg/m3; 0: steel, 7850 kg/m3.
  double density_kg_m3;
} sw_order;

// Circumstances that rule books make the factor of safety depend on. A record: filled by `sw_service_new_shell` or
// `sw_service_in_service`, then field by field. Where a choice is not named it is `SW_NOT_STATED`, `SW_YES` or
// `SW_NO`.
typedef struct sw_service {
  // 1: in service, not new. `sw_existing` takes it as 1 in any case.
  uint32_t existing;
  // Bought second-hand.
  uint32_t second_hand;
  // Past the book's age limit.
  uint32_t past_age_limit;
  // 1: inspected and tested as the book asks of boilers past their age limit.
  uint32_t tested;
  // A horizontal return tubular boiler.
  uint32_t tubular;
  // A lap exposed to fire.
  uint32_t lap_in_fire;
  // The boiler's weight pulls on the seam.
  uint32_t weight_on_seam;
  // `SW_NOT_STATED`, `SW_RIVETED_BY_HAND` or `SW_RIVETED_BY_MACHINE`.
  uint32_t riveting;
  // `SW_NOT_STATED` or `SW_HOLES_*`.
  uint32_t holes;
  // 1: inspected stripped down as the book asks of wide shells with laps.
  uint32_t stripped;
  // Not used.
  uint32_t reserved[4];
  // Length of the longest continuous lap along the shell, mm; 0: not stated.
  double lap_length_mm;
} sw_service;

// A joint along the shell of a boiler in service, as found. What is 0 is taken from the rule book or on the safe side,
// and listed by `sw_existing_assumptions`.
typedef struct sw_existing {
  // Size of this struct, set by `sw_existing_init`.
  uint32_t struct_size;
  // `SW_BY_MEASURE_*` added up: which lengths were measured; the others stand on a drawing, a certificate, a stamp.
  uint32_t measured;
  // `SW_METAL_*` of the plates: strengths that are not given are the book's for it.
  uint32_t plate_metal;
  // `SW_METAL_*` of the rivets; `SW_METAL_NOT_STATED`: as the plates.
  uint32_t rivet_metal;
  // `SW_FOOTING_*`: strengths at failure, unless they are permissible stresses.
  uint32_t footing;
  // 1: `corrosion_mm` is stated even where it is 0.
  uint32_t corrosion_stated;
  // The form.
  struct sw_form form;
  // The circumstances.
  struct sw_service service;
  // Greatest inside diameter of the shell, mm.
  double inside_mm;
  // Pitch of the outer row, or width of the strip where it has several rivets, mm.
  double pitch_mm;
  // The least plate found at the seam (plate A of a lap), mm.
  double plate_mm;
  // The second plate of a lap, mm; 0: as the first, and listed as assumed.
  double other_plate_mm;
  // The only, wide or first strap, mm.
  double wide_strap_mm;
  // The narrow or second strap, mm; 0: as the first one.
  double narrow_strap_mm;
  // The least plate of the shell away from the seam, mm; 0: not looked at.
  double shell_plate_mm;
  // The plate's thickness when new, by which driven rivets are tabulated, mm; 0: as it is now.
  double plate_when_new_mm;
  // Margin, mm; 0: not known, and its rules are not judged.
  double margin_mm;
  // Driven rivet, which is the hole, of each row, mm; 0 in rows 2 to 8: as row 1; 0 in row 1: by the book's table.
  double hole_mm[SW_MAX_ROWS];
  // Distance from each row to the next, mm; 0: not known, and its rules are not judged.
  double back_pitch_mm[SW_MAX_ROWS];
  // Tensile strength of the plates, MPa; 0: the book's for the metal.
  double tension_mpa;
  // Shear strength of the rivets, MPa; 0: the book's for the metal.
  double rivet_shear_mpa;
  // Crushing strength of the plates, MPa; 0: the book's, or left out.
  double bearing_mpa;
  // Factor of safety that the authority sets; 0: the book's.
  double safety_factor;
  // Corrosion allowance besides the wastage that is measured, mm; 0: the book's own.
  double corrosion_mm;
  // Present working pressure, MPa; 0: not stated, and there is neither margin nor life.
  double present_mpa;
  // Loss of thickness in a year, mm; 0: not known.
  double wastage_mm_per_year;
  // Plate at an earlier inspection, mm; counts where `wastage_mm_per_year` is 0: the wastage since then goes on.
  double earlier_plate_mm;
  // How many years ago that was.
  double earlier_years;
} sw_existing;

// How an input is known. A record: fill every member.
typedef struct sw_known {
  // Number of the input (`sw_field_find`, as in `pitch`).
  uint32_t field;
  // Its row or gap, from 1 to 255; 0 where it belongs to the joint.
  uint32_t row;
  // `SW_BASIS_*`: how it is known.
  uint32_t basis;
  // Not used.
  uint32_t reserved;
  // From where: a drawing, a certificate, the least of so many readings. NULL: not said.
  const char *source;
} sw_known;

// A sheet to be written: what it is of, and what stands on it besides the figures. It is of a check (`joint` with
// `materials`), of a sizing (`brief`) or of a rating (`existing`): set that one and leave the others NULL. A text that
// is NULL or empty is a line to be filled in by hand. Structs and texts are the caller's and are not kept.
typedef struct sw_sheet {
  // Size of this struct, set by `sw_sheet_init`.
  uint32_t struct_size;
  // 1: object, drawing and data are made up, and the sheet says so.
  uint32_t invented;
  // `SW_FOOTING_*`: what the stresses are; `SW_FOOTING_NOT_SAID`. A rating says it itself.
  uint32_t footing;
  // Lines of a page of plain text, 30 to 300, its foot included: caution, input hash and page x of y stand at the foot
  // of each page, a form feed between pages; 60 print well on A4. 0: a text without pages. Other dialects take none.
  uint32_t lines_per_page;
  // The factor of safety that made the stresses out of those behind `ultimate`; 0 without those.
  double safety_factor;
  // The joint to be checked, or NULL.
  const struct sw_joint *joint;
  // Its stresses; not looked at without `joint`.
  const struct sw_materials *materials;
  // The brief to be sized and checked, or NULL.
  const struct sw_brief *brief;
  // The existing joint to be rated, or NULL.
  const struct sw_existing *existing;
  // What the sheet is about, in a line.
  const char *title;
  // The object that the joint belongs to.
  const char *object;
  // Number of the drawing.
  const char *drawing_no;
  // Jurisdiction, or the authority that inspects.
  const char *jurisdiction;
  // Who prepared the sheet.
  const char *prepared;
  // Who checked it.
  const char *checked;
  // Date, as it is to be printed.
  const char *date;
  // The stresses at failure that were divided by `safety_factor`; NULL: there was no division. `SW_INCONSISTENT`
  // where the quotient is not the stresses of the task.
  const struct sw_materials *ultimate;
  // How inputs are known; what is not listed was given, what has no line on the sheet is left out. A rating keeps
  // its own list.
  const struct sw_known *known;
  // How many, at most `SW_MAX_KNOWN`.
  size_t known_count;
} sw_sheet;

// A seam as the shop makes it. Cut sizes that do not exist are not numbers.
typedef struct sw_shop {
  // Size of this struct, set by `sw_shop_init`.
  uint32_t struct_size;
  // `SW_FITTED_*`.
  uint32_t fitted;
  // Whole number of pitches (strips) in the run.
  uint32_t strips;
  // Number of rivets.
  uint32_t rivets;
  // Number of holes, on both sides of a butt.
  uint32_t holes;
  // Not used.
  uint32_t reserved;
  // Pitch (strip) that was asked for, mm.
  double asked_mm;
  // Pitch (strip) that follows, mm.
  double strip_mm;
  // Length of the seam, mm.
  double seam_mm;
  // Width of the part of plate B under a lap, mm.
  double overlap_width_mm;
  // Width of the single or wide strap, mm.
  double wide_width_mm;
  // Length of the single or wide strap, mm.
  double wide_length_mm;
  // Width of the narrow or second strap, mm.
  double narrow_width_mm;
  // Length of the narrow or second strap, mm.
  double narrow_length_mm;
  // Mass of all rivets as bought, kg.
  double rivets_kg;
  // Mass of the straps before drilling, kg.
  double straps_kg;
  // Mass of one plate over the lap before drilling, kg.
  double overlap_kg;
  // Mass drilled out of all plies, kg.
  double holes_kg;
  // What the seam adds to plates that meet edge to edge, kg.
  double total_kg;
  // Least efficiency of all modes with the fitted pitch.
  double efficiency;
} sw_shop;

// The rivets of one row. A record.
typedef struct sw_rivet_line {
  // The row, from 1.
  uint32_t row;
  // How many rivets.
  uint32_t count;
  // Cold rivet, mm.
  double rivet_mm;
  // Hole, mm.
  double hole_mm;
  // Grip, mm.
  double grip_mm;
  // Allowance for the closing head by the length rule, mm.
  double allowance_mm;
  // Length of the shank by the rule, mm.
  double length_mm;
  // Length to order, mm.
  double stock_mm;
  // Mass of all rivets of the row, kg.
  double mass_kg;
} sw_rivet_line;

// One hole. A record.
typedef struct sw_hole {
  // Number of the hole, from 1.
  uint32_t number;
  // `SW_SIDE_*`.
  uint32_t side;
  // The row, from 1.
  uint32_t row;
  // Number in the row, from 1.
  uint32_t in_row;
  // Along the seam from the datum, mm.
  double x_mm;
  // Across the seam from the middle of the joint, mm.
  double y_mm;
  // Angle of a girth, degrees; not a number on a straight seam.
  double angle_deg;
} sw_hole;

// The words of a title block; NULL is empty. The texts are the caller's and are not kept.
typedef struct sw_title {
  // Size of this struct, set by `sw_title_init`.
  uint32_t struct_size;
  // `SW_UNITS_*`: what the dimensions are in.
  uint32_t units;
  // `SW_EXTENT_*`; means nothing for a group.
  uint32_t extent;
  // Not used.
  uint32_t reserved;
  // What the joint belongs to.
  const char *object;
  // Number of the drawing.
  const char *drawing_no;
  // Rule book.
  const char *rule_book;
  // Date.
  const char *date;
  // Who prepared it.
  const char *prepared;
  // Who checked it.
  const char *checked;
} sw_title;

// A rivet of a group.
typedef struct sw_group_rivet {
  // Its place along x, mm.
  double x_mm;
  // Its place along y, mm.
  double y_mm;
  // Its hole, mm, which a driven rivet fills; 0 in all rivets: to be found by `sw_group_size`.
  double hole_mm;
  // The cold rivet, mm; 0: as large as its hole.
  double rivet_mm;
} sw_group_rivet;

// A group of rivets with its load and what is permitted. The array is the caller's and is not kept.
typedef struct sw_group {
  // Size of this struct, set by `sw_group_init`.
  uint32_t struct_size;
  // Shear planes of each rivet, 1 or 2.
  uint32_t shear_planes;
  // 0: the true eccentricity. Else the rivets in one vertical row: the effective eccentricity of an old AISC Manual
  // (Hicks p. 1.83), (1 + n)/2 inches less, for a vertical load. Not for new work.
  uint32_t row_rivets;
  // Not used.
  uint32_t reserved;
  // The rivets, numbered from 1 in this order.
  const struct sw_group_rivet *rivets;
  // How many rivets, 1 to `SW_MAX_GROUP`.
  size_t rivet_count;
  // The plate that the rivets bear on, mm: of two the thinner, of one between two others that or both of them together,
  // whichever is thinner. 0: not known, bearing is not worked out.
  double plate_mm;
  // Force along x, N.
  double load_x_n;
  // Force along y, N; negative where it hangs down.
  double load_y_n;
  // A point of its line along x, mm.
  double load_at_x_mm;
  // A point of its line along y, mm.
  double load_at_y_mm;
  // A couple, N mm, positive from x to y.
  double couple_nmm;
  // Shear stress that is permitted in the rivets, single shear, MPa.
  double shear_mpa;
  // Bearing stress that is permitted, MPa; 0: not given.
  double bearing_mpa;
} sw_group;

// A cylindrical shell under internal pressure.
typedef struct sw_shell {
  // Size of this struct, set by `sw_shell_init`.
  uint32_t struct_size;
  // `SW_FOOTING_*`: what the stresses are.
  uint32_t footing;
  // 1: `corrosion_mm` is stated even where it is 0.
  uint32_t corrosion_stated;
  // Not used.
  uint32_t reserved;
  // Greatest inside diameter, mm.
  double inside_mm;
  // Corrosion allowance, mm; 0: the book's own. By the book it comes on top of what its formula takes off, or takes
  // its place.
  double corrosion_mm;
  // Factor of safety in the place of the book's; 0: not given.
  double safety_factor;
  // Its circumstances.
  struct sw_service service;
} sw_shell;

// A factor of safety and where it comes from. A record.
typedef struct sw_factor {
  // `SW_FACTOR_*`.
  uint32_t basis;
  // Entry of the class that governs; `SW_NO_ENTRY`: none.
  uint32_t entry;
  // The factor; the constant C where the basis says so.
  double value;
} sw_factor;

// The working pressure that a seam allows, and what it rests on. A record.
typedef struct sw_allowed {
  // 1 where the outside radius counted, otherwise 0.
  uint32_t outside;
  // Not used.
  uint32_t reserved;
  // Working pressure, MPa; not a number: there is none.
  double pressure_mpa;
  // Efficiency that was credited.
  double efficiency;
  // Taken off the plate by the formula, mm.
  double allowance_mm;
  // The factor of safety.
  struct sw_factor factor;
} sw_allowed;

// One thing that a result rests on. A record. Texts: `sw_assumption_what`, `sw_assumption_unit`, `sw_basis_word`.
typedef struct sw_assumption {
  // Number of what it is about.
  uint32_t about;
  // Row, from 1; 0 for the whole.
  uint32_t row;
  // `SW_BASIS_*`: how it is known.
  uint32_t basis;
  // The entry of the rule book behind it; `SW_NO_ENTRY`: none.
  uint32_t entry;
  // 1 where it is a circumstance and no figure.
  uint32_t circumstance;
  // Not used.
  uint32_t reserved;
  // The figure in its unit; of a circumstance 1 for yes, 0 for no.
  double value;
} sw_assumption;

// What a seam brings to the pressure of a shell, where its efficiency is known. A record: fill every member.
typedef struct sw_seam {
  // Form of the joint, which decides on constants and factors of safety.
  struct sw_form form;
  // Thickness of the main plate, of the weaker one in a lap, mm.
  double plate_mm;
  // Its tensile stress, on the footing of the shell, MPa.
  double tension_mpa;
  // Efficiency credited, as a fraction; 1 for the solid plate.
  double efficiency;
} sw_seam;

// A rated joint. What there is none of is not a number.
typedef struct sw_rating {
  // Size of this struct, set by `sw_rating_init`.
  uint32_t struct_size;
  // `SW_GOVERNS_*`: what sets the pressure.
  uint32_t governs;
  // The entry of the limit where a rule governs; otherwise `SW_NO_ENTRY`.
  uint32_t governs_entry;
  // Findings on the shell (`sw_existing_findings`); those on the joint are in its analysis.
  uint32_t findings;
  // Rules on the shell that are not met.
  uint32_t open;
  // Not used.
  uint32_t reserved;
  // The allowable working pressure: the least of all, MPa.
  double allowed_mpa;
  // Allowed over present pressure.
  double margin;
  // Hydrostatic test pressure of the book, MPa.
  double test_mpa;
  // Years until only the present pressure is allowed; 0: it is not allowed now; infinite: nothing wastes.
  double years;
  // Loss of thickness in a year that this rests on, mm.
  double wastage_mm_per_year;
  // Plate at the seam then, mm.
  double plate_then_mm;
  // Pressure allowed then, MPa.
  double allowed_then_mpa;
  // What the seam allows.
  struct sw_allowed seam;
  // What the solid plate away from the seam allows.
  struct sw_allowed plate;
  // The strengths that were taken.
  struct sw_materials materials;
} sw_rating;

// How many candidates there were, and what became of them: `grid` is `fitting`, `by_bound` and all `excluded`
// together.
typedef struct sw_tally {
  // Size of this struct, set by `sw_tally_init`.
  uint32_t struct_size;
  // Number of the constraint that excluded most; of equals the one that is asked first.
  uint32_t most;
  // All candidates of the grid; a form and size without any pitch counts as one.
  uint64_t grid;
  // Sized, checked and weighed in full.
  uint64_t examined;
  // Of those, the ones that meet all constraints.
  uint64_t fitting;
  // Left out because a bound shows that they cannot win.
  uint64_t by_bound;
  // Excluded, by the number of the constraint (`sw_constraint_what`).
  uint64_t excluded[SW_MAX_CONSTRAINTS];
} sw_tally;

// What is searched for, over which candidates, under which constraints; what is 0 or NULL is open. Arrays and structs
// behind pointers are the caller's and are not kept.
typedef struct sw_search {
  // Size of this struct, set by `sw_search_init`.
  uint32_t struct_size;
  // `SW_OBJECTIVE_*`.
  uint32_t objective;
  // Most rows on one side; 0: any.
  uint32_t rows_most;
  // 1: joints of open findings as well, those that break a rule of the book or have no room for their heads.
  uint32_t any_finding;
  // The stresses. Both plates of a lap are alike.
  struct sw_materials materials;
  // The plates to choose from, mm: one, or the stock.
  const double *plates_mm;
  // How many plates.
  size_t plate_count;
  // The forms to choose from; of equals the first wins. NULL: all named forms.
  const struct sw_form *forms;
  // How many forms, at most `SW_MAX_FORMS`.
  size_t form_count;
  // The holes to choose from, mm. NULL: the book's series.
  const double *holes_mm;
  // How many holes.
  size_t hole_count;
  // The shell that has to carry `pressure_mpa`; NULL: no pressure is asked for.
  const struct sw_shell *shell;
  // Rivets, their lengths and the density by which a metre of seam is weighed; its run is not used. NULL: no mass is
  // known, and none decides between equals.
  const struct sw_order *order;
  // Least cold rivet, mm.
  double rivet_least_mm;
  // Greatest cold rivet, mm.
  double rivet_most_mm;
  // Greatest pitch of the outer row, mm. Without it a form that the book's table of greatest pitches does not reach
  // is left out.
  double pitch_most_mm;
  // Least efficiency credited, as a fraction.
  double efficiency_least;
  // Working pressure to be carried, MPa; counts only where a shell is given.
  double pressure_mpa;
} sw_search;

// A joint of the grid that meets all constraints. A record. `sw_search_brief` makes the brief that sizes it.
typedef struct sw_candidate {
  // The form.
  struct sw_form form;
  // What governs: row at which the plate tears, from 1; 0: it does not.
  uint32_t plate_row;
  // Row at which plate B or the single, wide or first strap tears; 0: it does not.
  uint32_t other_row;
  // Row at which the narrow or second strap tears; 0: it does not.
  uint32_t narrow_row;
  // Not used.
  uint32_t reserved;
  // The plate, mm.
  double plate_mm;
  // The hole, mm.
  double hole_mm;
  // The cold rivet, mm.
  double rivet_mm;
  // Pitch of the outer row, mm.
  double pitch_mm;
  // Efficiency credited.
  double efficiency;
  // Rivets in a metre of seam, both sides of a butt.
  double rivets_per_m;
  // Mass that a metre of seam adds, kg; not a number where it was not asked for.
  double kg_per_m;
  // Working pressure, MPa; not a number where it was not asked for.
  double pressure_mpa;
} sw_candidate;

// One of the best, and why it stands where it stands. A record. Texts: `sw_measure_what`, `sw_constraint_what`.
typedef struct sw_ranked {
  // The joint.
  struct sw_candidate candidate;
  // `SW_MEASURE_*`: the first measure in which it is behind the best.
  uint32_t behind;
  // `SW_BESIDE_*`: what lies a step of the pitch lower.
  uint32_t lower;
  // Number of the constraint or of the measure there.
  uint32_t lower_why;
  // `SW_BESIDE_*`: what lies a step of the pitch higher.
  uint32_t higher;
  // Number of the constraint or of the measure there.
  uint32_t higher_why;
  // Not used.
  uint32_t reserved;
} sw_ranked;

// Memory for one joint of a front while it is looked for. Its bytes mean nothing to the caller.
typedef struct sw_front_slot {
  // Not to be read.
  uint64_t memory[32];
} sw_front_slot;

// A girth seam against what is asked of it.
typedef struct sw_girth {
  // Size of this struct, set by `sw_girth_init`.
  uint32_t struct_size;
  // The entry that asks for the efficiency needed; `SW_NO_ENTRY`: the load does.
  uint32_t entry;
  // Strips in the girth.
  uint32_t strips;
  // Rivets in the girth.
  uint32_t rivets;
  // Findings on the girth seam.
  uint32_t findings;
  // Rules on it that are not met.
  uint32_t open;
  // The working pressure that it allows, MPa.
  double pressure_mpa;
  // Its efficiency credited.
  double efficiency;
  // The efficiency that it needs: by the load on the end and by the book, the greater.
  double needed;
  // Rivets that the load on the end needs, by shear alone; not a whole number.
  double end_rivets;
} sw_girth;

// What a vessel is to be designed for. Arrays and structs behind pointers are the caller's and are not kept.
typedef struct sw_vessel_brief {
  // Size of this struct, set by `sw_vessel_brief_init`.
  uint32_t struct_size;
  // 1: a girth seam is wanted as well.
  uint32_t girth_wanted;
  // `SW_GIRTH_*`: where it lies.
  uint32_t girth_place;
  // Not used.
  uint32_t reserved;
  // Form of the seam along the shell.
  struct sw_form form;
  // Form of the girth seam; more rows are taken where those do not do.
  struct sw_form girth_form;
  // The stresses, on the footing of the shell.
  struct sw_materials materials;
  // The shell.
  const struct sw_shell *shell;
  // Plates of the stock, mm, rising. NULL: multiples of a step.
  const double *plates_mm;
  // How many plates.
  size_t plate_count;
  // Step of the stock, mm; counts where no plates are given, as the next two.
  double stock_step_mm;
  // The thinnest plate of the stock, mm.
  double stock_from_mm;
  // The thickest plate of the stock, mm.
  double stock_to_mm;
  // Working pressure, MPa.
  double pressure_mpa;
  // Hole of the seam along the shell, mm; 0: by the book.
  double hole_mm;
  // Its cold rivet, mm; 0: by the book. Counts only where the hole is given.
  double rivet_mm;
} sw_vessel_brief;

// A shell with its seams, or why no stock thickness will do.
typedef struct sw_vessel {
  // Size of this struct, set by `sw_vessel_init`.
  uint32_t struct_size;
  // 1: a plate of the stock carries the pressure. 0: none does, and only what follows up to `best_mpa` counts.
  uint32_t fits;
  // Thicknesses that were tried, the one taken included.
  uint32_t tried;
  // Those of which no joint could be made; `why` says why the last of them.
  uint32_t refused;
  // Those below the least plate of the book.
  uint32_t too_thin;
  // 1: there is a girth seam.
  uint32_t girth;
  // Findings on the shell (`sw_vessel_findings`); those on the joints are found by `sw_joint_check`.
  uint32_t findings;
  // Rules on the shell that are not met.
  uint32_t open;
  // Where nothing fits: the plate of the joint that carries most, mm; not a number: there is no joint.
  double best_plate_mm;
  // Where nothing fits: the pressure that it allows, MPa.
  double best_mpa;
  // Shell plate, a stock thickness, mm.
  double plate_mm;
  // What the seam along the shell allows.
  struct sw_allowed allowed;
} sw_vessel;

// One line of a boiler's table: a part and the pressure that it allows. A record.
typedef struct sw_boiler_line {
  // `SW_PART_*`.
  uint32_t part;
  // Not used.
  uint32_t reserved;
  // Allowed pressure, MPa; 0: it allows none.
  double pressure_mpa;
} sw_boiler_line;

// A group under its load.
typedef struct sw_group_found {
  // Size of this struct, set by `sw_group_found_init`.
  uint32_t struct_size;
  // The critical rivet, from 1: by stress, not by force; of equal ones the first.
  uint32_t critical;
  // `SW_GROUP_SHEAR` or `SW_GROUP_BEARING`, whichever is used more.
  uint32_t governs;
  // The rivet with the greatest shear stress, from 1.
  uint32_t shear_rivet;
  // The rivet with the greatest bearing stress, from 1; 0 without a plate.
  uint32_t bearing_rivet;
  // Findings.
  uint32_t findings;
  // Findings that are open.
  uint32_t open;
  // Not used.
  uint32_t reserved;
  // Centroid of the rivets' areas along x, mm.
  double centroid_x_mm;
  // Centroid along y, mm.
  double centroid_y_mm;
  // The areas together over that of the largest rivet: the number of rivets where all are alike.
  double areas;
  // Polar moment about the centroid, mm2: squares of distances, each times its area over that of the largest.
  double polar_mm2;
  // The load from the centroid along x, mm; the effective eccentricity where that was asked for.
  double arm_x_mm;
  // The load from the centroid along y, mm.
  double arm_y_mm;
  // Moment about the centroid, N mm, positive from x to y.
  double moment_nmm;
  // Instantaneous centre along x, mm; not a number where the group does not turn.
  double centre_x_mm;
  // Instantaneous centre along y, mm.
  double centre_y_mm;
  // The greatest shear stress, MPa.
  double shear_mpa;
  // Over the one permitted.
  double shear_used;
  // The greatest bearing stress, MPa; not a number without a plate.
  double bearing_mpa;
  // Over the one permitted; not a number where none was given.
  double bearing_used;
  // The greater of both: 1 is all that is permitted.
  double used;
  // The force that is allowed along the same line, N; a couple grows with it. Not a number without a force.
  double safe_load_n;
  // The couple that is allowed, N mm; not a number without a couple.
  double safe_couple_nmm;
  // After `sw_group_size`: the diameter that shear needs, mm. Not a number after a check, as the next three.
  double by_shear_mm;
  // The diameter that bearing needs, mm; not a number without a plate or a stress.
  double by_bearing_mm;
  // The standard hole taken, mm.
  double hole_mm;
  // Its cold rivet, mm.
  double rivet_mm;
} sw_group_found;

// What one rivet of a group takes: forces that the loaded plate puts on it.
typedef struct sw_rivet_load {
  // Its place along x, mm.
  double x_mm;
  // Its place along y, mm.
  double y_mm;
  // Its hole, mm.
  double hole_mm;
  // The cold rivet, mm.
  double rivet_mm;
  // Share of the load at the centroid along x, N.
  double direct_x_n;
  // The same along y, N.
  double direct_y_n;
  // Share of the moment along x, N.
  double turning_x_n;
  // The same along y, N.
  double turning_y_n;
  // Both together along x, N.
  double force_x_n;
  // Both together along y, N.
  double force_y_n;
  // Both together, N.
  double force_n;
  // Direction of the force in degrees from x towards y, above -180 and up to 180.
  double degrees;
  // Shear stress, MPa.
  double shear_mpa;
  // Bearing stress, MPa; not a number without a plate.
  double bearing_mpa;
} sw_rivet_load;

// What figures are about: a joint that was checked, or a brief that was sized. The structs are the caller's and are
// not kept.
typedef struct sw_case {
  // Size of this struct, set by `sw_case_init`.
  uint32_t struct_size;
  // Not used.
  uint32_t reserved;
  // The joint, and its stresses behind `materials`; NULL where a brief is given.
  const struct sw_joint *joint;
  // The stresses of the joint; NULL where a brief is given.
  const struct sw_materials *materials;
  // The brief; NULL where a joint is given.
  const struct sw_brief *brief;
} sw_case;

// Edits of the catalogue that together give the stated figures, or come near them. A record.
typedef struct sw_explanation {
  // Numbers of the conventions (`sw_convention_words`); `SW_NO_CONVENTION`: none.
  uint32_t convention[2];
  // The figures that are not met, one bit each, the first figure the lowest bit.
  uint32_t out;
  // 1 where it may reproduce the figures by chance only.
  uint32_t by_chance;
  // The worst miss, in widths of what a figure leaves open; at most 1 where all are met.
  double miss;
  // The figures as they come out, in the units of their quantities; not a number where the routine has none.
  double value[SW_MAX_FIGURES];
} sw_explanation;

// What a search over the conventions found.
typedef struct sw_reconciled {
  // Size of this struct, set by `sw_reconciled_init`.
  uint32_t struct_size;
  // Explanations that reproduce the figures; 0: not reproduced.
  uint32_t explanations;
  // Explanations that would, but may do so by chance.
  uint32_t by_chance;
  // Edits and pairs of edits that were worked.
  uint32_t tried;
  // The case as it stands.
  struct sw_explanation as_it_stands;
  // The nearest of the single edits, or the case as it stands.
  struct sw_explanation nearest;
} sw_reconciled;

// A quantity of the working and the row that it belongs to. A record.
typedef struct sw_name {
  // Number of the quantity (`sw_quantity_find`).
  uint32_t quantity;
  // The row, from 1; 0 where it belongs to the joint.
  uint32_t row;
} sw_name;

// One stated figure. A record: as it is printed, or a value and how far it is open.
typedef struct sw_figure {
  // What it is about. `Ps` and `Pc` of row 0 are those of all rivets, `Pt` is the plate's weaker outer row.
  struct sw_name name;
  // The figure as printed, as in `67.5`: half a unit of its last digit is left open. NULL: `value` and `slack`
  // count.
  const char *printed;
  // The printed unit in the unit of the quantity: 1 for N and mm, 1000 for kN, 0.01 for per cent, 25.4 for inches.
  double scale;
  // The value in the unit of the quantity.
  double value;
  // How far it is open either way.
  double slack;
} sw_figure;

// What exercise is wanted: a family and the number that it is drawn from. The same number, family and rule book give
// the same exercise on every machine. A record: fill every member.
typedef struct sw_exercise {
  // The form of the joint.
  struct sw_form form;
  // `SW_SETTING_*`.
  uint32_t setting;
  // `SW_TASK_*`. Cap and thin plate are taught by sizing.
  uint32_t task;
  // `SW_EFFECT_*`: what decides, by at least three per cent.
  uint32_t effect;
  // Not used.
  uint32_t reserved;
  // The number that it is drawn from.
  uint64_t seed;
} sw_exercise;

// One figure that an exercise asks for, and the answer. A record.
typedef struct sw_asked {
  // The quantity.
  struct sw_name name;
  // The answer, in the unit of the quantity.
  double value;
} sw_asked;

// The mark of one answer. A record.
typedef struct sw_mark {
  // The quantity that was asked for.
  struct sw_name name;
  // `SW_MARK_*`.
  uint32_t mark;
  // Number of the slip or habit that is known (`sw_convention_words`); `SW_NO_CONVENTION`: none.
  uint32_t convention;
  // 1 where the digits rule out chance.
  uint32_t sure;
  // Not used.
  uint32_t reserved;
  // The answer of the key.
  double value;
} sw_mark;

// Tolerances, each to either side, mm; 0 for a dimension that is exact. A record: fill every member.
typedef struct sw_tolerances {
  // Of the plate; in a lap of each plate for itself.
  double plate_mm;
  // Of each strap for itself.
  double straps_mm;
  // Of the holes, which move together.
  double hole_mm;
  // Of the pitch (the width of the strip where the outer row has several rivets in it).
  double pitch_mm;
} sw_tolerances;

// A worst case, and what each tolerance alone contributes. Arrays: plate, other plate or wide strap, narrow strap,
// hole, pitch.
typedef struct sw_worst {
  // Size of this struct, set by `sw_worst_init`.
  uint32_t struct_size;
  // 1 where the worst case is proved; 0: it is the worst that a grid found.
  uint32_t exact;
  // 1 where the worst lies inside the tolerance of the hole and not at an end of it.
  uint32_t hole_inside;
  // The mode that governs there: rows as in `sw_slope.left_row`.
  uint32_t row[3];
  // The measure of the joint as stated.
  double stated;
  // The worst over all tolerances together.
  double worst;
  // The worst over the stated: 0.98 for two per cent lost.
  double ratio;
  // Deviations from what was stated at which it is reached, mm.
  double deviation_mm[SW_TOLERANCES];
  // The worst with one tolerance alone. The dimension with the lowest one matters most.
  double alone[SW_TOLERANCES];
} sw_worst;

// Two derivatives: towards less of the input, and towards more. They differ where another mode begins to govern.
typedef struct sw_sided {
  // Towards less.
  double left;
  // Towards more.
  double right;
} sw_sided;

// What one input does, each for one unit more of it: mm, MPa, or one. A record.
typedef struct sw_slope {
  // The dimension or stress that was given (`sw_quantity_what`); counts where `entry` is `SW_NO_ENTRY`.
  struct sw_name name;
  // The figure of the rule book; `SW_NO_ENTRY`: a dimension or stress.
  uint32_t entry;
  // 1 where another mode governs towards more than towards less.
  uint32_t mode_changes;
  // The mode that governs towards less: row at which the plate, the other plate or wide strap, and the narrow strap
  // tear, from 1; 0: it does not.
  uint32_t left_row[3];
  // The mode that governs towards more.
  uint32_t right_row[3];
  // The value of the input.
  double value;
  // Of the efficiency over all modes.
  struct sw_sided efficiency;
  // Of the efficiency by the book.
  struct sw_sided book_efficiency;
  // Of the efficiency credited.
  struct sw_sided credited;
  // Of the strength of the weakest mode for a millimetre of seam, N/mm. A thin shell's pressure moves with it.
  struct sw_sided strength;
} sw_slope;

// One alternative: a brief under a book. A record: fill every member. The structs are the caller's and are not kept.
typedef struct sw_column {
  // What is sized.
  const struct sw_brief *brief;
  // By which book.
  const struct sw_rules *rules;
  // The shell whose working pressure is asked for; NULL: none is.
  const struct sw_shell *shell;
} sw_column;

// What a column comes to. A record. Its joint: `sw_joint_size` of the same brief and book.
typedef struct sw_compared {
  // The column, from 0, in the order given.
  uint32_t column;
  // `SW_OK`, or why it cannot be sized; then nothing else counts.
  uint32_t status;
  // Rules that are not met.
  uint32_t open;
  // `SW_OK`, or why there is no working pressure although a shell was given.
  uint32_t pressure_status;
  // The pitch of the outer row, mm.
  double pitch_mm;
  // The hole of the outer row, mm.
  double hole_mm;
  // Efficiency by the modes that the book counts.
  double book_efficiency;
  // Efficiency over all modes.
  double efficiency;
  // Efficiency credited.
  double credited_efficiency;
  // The working pressure, MPa; not a number: there is none.
  double pressure_mpa;
  // The governing mode.
  struct sw_mode governing;
} sw_compared;

// One step of a sizing, where two columns part. A record.
typedef struct sw_stage {
  // 1: there is such a step; 0: the steps of this column have ended.
  uint32_t there;
  // The entry of the rule book behind it; `SW_NO_ENTRY`: none.
  uint32_t entry;
  // What it is about.
  struct sw_name name;
  // The value, in the unit of the quantity.
  double value;
} sw_stage;

// Where a column parts from the first one in a section. A record.
typedef struct sw_parting {
  // 1: the books part here; 0: it only follows from what differs before, or was given differently.
  uint32_t by_rule;
  // Not used.
  uint32_t reserved;
  // The step of the first column.
  struct sw_stage first;
  // The step of the other one.
  struct sw_stage other;
} sw_parting;

// A lettered mode. A record. Name: `sw_letter_name`.
typedef struct sw_letter {
  // The letter, `'A'` and on, as a character code.
  uint32_t letter;
  // 1 for the solid strip, which is no failure of the joint; its rows are 0.
  uint32_t solid;
  // Row at which the plate (plate A) tears, from 1; 0: it does not.
  uint32_t plate_row;
  // Row at which plate B or the strap tears; 0: it does not.
  uint32_t other_row;
  // Row at which the narrow or second strap tears; 0: it does not.
  uint32_t narrow_row;
  // `SW_FATE_*` of rivets in single shear, where they fail.
  uint32_t single_fate;
  // `SW_FATE_*` of rivets in double shear, where they fail.
  uint32_t double_fate;
  // Not used.
  uint32_t reserved;
  // Strength of the strip, N.
  double strength_n;
} sw_letter;

// Masses of one strip of a seam that goes on and on, kg. A record.
typedef struct sw_masses {
  // All rivets as bought.
  double rivets_kg;
  // The straps before drilling; nothing in a lap.
  double straps_kg;
  // One plate (plate B) over the lap, before drilling; nothing in a butt joint.
  double overlap_kg;
  // What is drilled out of all plies.
  double holes_kg;
  // What the strip adds to plates that meet edge to edge.
  double total_kg;
  // The same for a metre of seam.
  double kg_per_m;
} sw_masses;

// One input of a sweep. A record: all zeros for what is not given.
typedef struct sw_sweep_column {
  // The values; NULL: `same` in all rows.
  const double *values;
  // How many values; the number of rows, unless they are the axis of a grid.
  size_t count;
  // 0: one value for each row. Otherwise an axis of a grid that is nowhere written out: each value stands for so many
  // rows, then comes the next, and after the last the first again.
  size_t each;
  // The value of all rows where `values` is NULL; 0: not given.
  double same;
} sw_sweep_column;

// Joints of one form, row by row. Arrays are the caller's and are not kept.
typedef struct sw_sweep {
  // Size of this struct, set by `sw_sweep_init`.
  uint32_t struct_size;
  // Not used.
  uint32_t reserved;
  // The form of all joints.
  struct sw_form form;
  // Number of rows.
  size_t rows;
  // Pitch of the outer row; width of the strip where that row has several rivets in it.
  struct sw_sweep_column pitch_mm;
  // Main plate; plate A of a lap.
  struct sw_sweep_column plate_mm;
  // Hole of every row.
  struct sw_sweep_column hole_mm;
  // Tensile stress of the plate.
  struct sw_sweep_column tension_mpa;
  // Shear stress of the rivets, single shear.
  struct sw_sweep_column rivet_shear_mpa;
  // Cold rivet of every row; as large as the hole where not given.
  struct sw_sweep_column rivet_mm;
  // Plate B of a lap, the single strap, the wide strap, or both straps.
  struct sw_sweep_column other_mm;
  // The second or narrow strap; as thick as `other_mm` where not given.
  struct sw_sweep_column narrow_mm;
  // Tensile stress of plate B or the straps; as of the plate where not given.
  struct sw_sweep_column other_tension_mpa;
  // Bearing stress of the plate.
  struct sw_sweep_column bearing_mpa;
  // Bearing stress of plate B or the straps; as of the plate where not given.
  struct sw_sweep_column other_bearing_mpa;
  // Shear stress of plates and straps at the margin.
  struct sw_sweep_column shear_out_mpa;
  // Centre of the edge row to the plate edge.
  struct sw_sweep_column margin_mm;
  // Distance from each row to the next.
  struct sw_sweep_column back_pitch_mm;
} sw_sweep;

// Where the results of a sweep go: arrays of the caller's, apart from the inputs and from each other; NULL for what is
// not wanted, except `efficiency`.
typedef struct sw_sweep_results {
  // Size of this struct, set by `sw_sweep_results_init`.
  uint32_t struct_size;
  // Not used.
  uint32_t reserved;
  // Over all modes; not a number where the row could not be computed.
  double *efficiency;
  // Over the modes that the rule book counts.
  double *book_efficiency;
  // The lesser of both, capped by the book.
  double *credited_efficiency;
  // Number of the governing mode (see `sw_sweep_mode`), `SW_NO_MODE` where the row could not be computed.
  uint16_t *mode;
  // `SW_OK`, or the kind of error of the row (see `sw_sweep_joint`).
  uint8_t *status;
} sw_sweep_results;

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

// Version of the library as a number: major * 65536 + minor * 256 + patch. Compare it with the header's.
uint32_t sw_version_number(void);

// Version of the library as a text, as in `0.1.0`.
uint32_t sw_version_text(char *buf, size_t len, size_t *needed);

// The caution that goes with every result. Show it.
uint32_t sw_caution_text(char *buf, size_t len, size_t *needed);

// Fills an error struct with its defaults.
void sw_error_init(struct sw_error *error);

// The whole error in words: field, value, what is wrong, limit, remedy. The figures are in mm, MPa and N.
uint32_t sw_error_message(const struct sw_error *error, char *buf, size_t len, size_t *needed);

// The key of the field at fault, as in `pitch`; empty where the call itself was wrong.
uint32_t sw_error_field(const struct sw_error *error, char *buf, size_t len, size_t *needed);

// The clause behind the limit with its label, by the rule book that was used; empty where there is none.
uint32_t sw_error_clause(const struct sw_error *error,
                         const struct sw_rules *rules,
                         char *buf,
                         size_t len,
                         size_t *needed);

// What a status means, in a few words; `unknown status` for any other number.
uint32_t sw_status_text(uint32_t status, char *buf, size_t len, size_t *needed);

// A length of a unit (`SW_LENGTH_*`) in millimetres; not a number for an unknown unit.
double sw_length_to_mm(double value, uint32_t unit);

// A length in millimetres in a unit (`SW_LENGTH_*`); not a number for an unknown unit.
double sw_length_from_mm(double mm, uint32_t unit);

// A moment of a unit (`SW_MOMENT_*`) in newton-millimetres; not a number for an unknown unit.
double sw_moment_to_nmm(double value, uint32_t unit);

// A moment in newton-millimetres in a unit (`SW_MOMENT_*`); not a number for an unknown unit.
double sw_moment_from_nmm(double nmm, uint32_t unit);

// An area of a unit (`SW_AREA_*`) in square millimetres; not a number for an unknown unit.
double sw_area_to_mm2(double value, uint32_t unit);

// An area in square millimetres in a unit (`SW_AREA_*`); not a number for an unknown unit.
double sw_area_from_mm2(double mm2, uint32_t unit);

// A force of a unit (`SW_FORCE_*`) in newtons; not a number for an unknown unit.
double sw_force_to_n(double value, uint32_t unit);

// A force in newtons in a unit (`SW_FORCE_*`); not a number for an unknown unit.
double sw_force_from_n(double n, uint32_t unit);

// A stress of a unit (`SW_STRESS_*`) in megapascals; not a number for an unknown unit.
double sw_stress_to_mpa(double value, uint32_t unit);

// A stress in megapascals in a unit (`SW_STRESS_*`); not a number for an unknown unit.
double sw_stress_from_mpa(double mpa, uint32_t unit);

// A gauge pressure of a unit (`SW_PRESSURE_*`) in megapascals; not a number for an unknown unit.
double sw_pressure_to_mpa(double value, uint32_t unit);

// A gauge pressure in megapascals in a unit (`SW_PRESSURE_*`); not a number for an unknown unit.
double sw_pressure_from_mpa(double mpa, uint32_t unit);

// Reads a length with its unit, as in `12 mm` or `13/16 in`. A bare number is refused (`SW_UNREADABLE`).
uint32_t sw_length_parse(const char *text, double *mm, struct sw_error *error);

// Reads a stress with its unit, as in `80 MPa`, `11 ksi` or `28 tons/in2`. A bare number is refused (`SW_UNREADABLE`).
uint32_t sw_stress_parse(const char *text, double *mpa, struct sw_error *error);

// Fills a rule book with the values of a book that is silent on everything.
void sw_rules_init(struct sw_rules *rules);

// How many built-in books there are.
uint32_t sw_book_count(void);

// The id of a built-in book, by its number from 1 to `sw_book_count()`; 0 is a book of your own.
uint32_t sw_book_id(uint32_t book, char *buf, size_t len, size_t *needed);

// The title of a built-in book, by its number as in `sw_book_id`.
uint32_t sw_book_title(uint32_t book, char *buf, size_t len, size_t *needed);

// Copies the built-in book of an id (`metric`, `indian`, `us-code`, ...) into a struct, which needs no init before.
// `SW_BAD_CHOICE` where there is no such book.
uint32_t sw_rules_find(const char *id, struct sw_rules *rules, struct sw_error *error);

// The number of the entry of a key, as in `shear.double` or `series.hole.3`; `SW_UNKNOWN_KEY` where there is none.
uint32_t sw_entry_find(const char *key, uint32_t *entry, struct sw_error *error);

// Fills an entry's description with its defaults.
void sw_entry_info_init(struct sw_entry_info *info);

// Kind, line and range of an entry, by its number from 0 to `SW_RULE_ENTRIES - 1`.
uint32_t sw_entry_describe(uint32_t entry, struct sw_entry_info *info, struct sw_error *error);

// The key of an entry, with its line where it is one of a list.
uint32_t sw_entry_key(uint32_t entry, char *buf, size_t len, size_t *needed);

// What an entry says, in words.
uint32_t sw_entry_what(uint32_t entry, char *buf, size_t len, size_t *needed);

// The unit of an entry (`mm`, `MPa`, ...); empty for pure numbers, switches and choices.
uint32_t sw_entry_unit(uint32_t entry, char *buf, size_t len, size_t *needed);

// One way of a choice, from 0, in words.
uint32_t sw_entry_choice(uint32_t entry, uint32_t choice, char *buf, size_t len, size_t *needed);

// The value of the entry of a key; `SW_UNKNOWN_KEY` where there is none.
uint32_t sw_rules_get(const struct sw_rules *rules, const char *key, double *value, struct sw_error *error);

// Changes the entry of a key; the value is held to the entry's range, and nothing changes where it does not fit
// (`SW_TOO_SMALL`, `SW_TOO_LARGE`, `SW_WRONG_CHOICE`) or where there is no such key (`SW_UNKNOWN_KEY`).
uint32_t sw_rules_set(struct sw_rules *rules, const char *key, double value, struct sw_error *error);

// Whether a book agrees with itself: series and tables rise, least stays below greatest. `SW_BOOK_UNSOUND` names the
// entries that do not.
uint32_t sw_rules_validate(const struct sw_rules *rules, struct sw_error *error);

// The clause that an entry stands on, with its label (READ, MEM, PRACTICE, OWN) and source; empty where it has none.
uint32_t sw_rules_clause(const struct sw_rules *rules, uint32_t entry, char *buf, size_t len, size_t *needed);

// The ultimate strengths that a book lets one assume of plate and rivets (`SW_METAL_*`) of unknown make. `SW_MISSING`
// where the book has none.
uint32_t sw_rules_assume(const struct sw_rules *rules,
                         uint32_t plate,
                         uint32_t rivets,
                         struct sw_materials *materials,
                         struct sw_error *error);

// The numbers of a built-in book, where they stand; copy the struct to change them. NULL for NULL.
const struct sw_rules *sw_book_numbers(const struct sw_book *book);

// The built-in book `metric`.
const struct sw_book *sw_book_metric(void);

// The built-in book `indian`.
const struct sw_book *sw_book_indian(void);

// The built-in book `us-code`.
const struct sw_book *sw_book_us_code(void);

// The built-in book `us-existing`.
const struct sw_book *sw_book_us_existing(void);

// The built-in book `british-marine`.
const struct sw_book *sw_book_british_marine(void);

// The built-in book `german-1908`.
const struct sw_book *sw_book_german_1908(void);

// The built-in book `structural`.
const struct sw_book *sw_book_structural(void);

// The built-in book `us-michigan`.
const struct sw_book *sw_book_us_michigan(void);

// The built-in book `us-north-carolina`.
const struct sw_book *sw_book_us_north_carolina(void);

// The built-in book `us-montana`.
const struct sw_book *sw_book_us_montana(void);

// The built-in book `us-california`.
const struct sw_book *sw_book_us_california(void);

// The built-in book `us-locomotive`.
const struct sw_book *sw_book_us_locomotive(void);

// A lap joint of 1 to 4 equal rows, zig-zag. Other numbers are refused (`SW_TOO_SMALL`, `SW_TOO_LARGE`), here and
// below.
uint32_t sw_form_lap(uint32_t row_count, struct sw_form *form, struct sw_error *error);

// A butt joint with a single strap, 1 to 3 equal rows on each side, zig-zag.
uint32_t sw_form_single_strap(uint32_t row_count, struct sw_form *form, struct sw_error *error);

// A butt joint with two straps of equal width, 1 to 5 equal rows on each side, zig-zag.
uint32_t sw_form_double_strap(uint32_t row_count, struct sw_form *form, struct sw_error *error);

// A butt joint with a wide and a narrow strap, 2 to 5 rows on each side, zig-zag; rivets by row 1-2, 1-2-2, 1-2-4-4
// or 1-2-4-4-4.
uint32_t sw_form_unequal_straps(uint32_t row_count, struct sw_form *form, struct sw_error *error);

// The same form with every other rivet of the outer row left out (of both outer rows in a lap).
// `SW_INCONSISTENT` for a form of one row, or where it has fewer rivets outside already.
uint32_t sw_form_omit_alternate(const struct sw_form *form, struct sw_form *thinned, struct sw_error *error);

// Whether a form that was filled field by field is one.
uint32_t sw_form_validate(const struct sw_form *form, struct sw_error *error);

// The form in the trade's words.
uint32_t sw_form_name(const struct sw_form *form, char *buf, size_t len, size_t *needed);

// Fills stresses with 0: not given.
void sw_materials_init(struct sw_materials *materials);

// Whether all stresses lie in their ranges.
uint32_t sw_materials_validate(const struct sw_materials *materials, struct sw_error *error);

// All stresses divided by a factor of safety (1 to 20).
uint32_t sw_materials_divide(const struct sw_materials *materials,
                             double factor,
                             struct sw_materials *divided,
                             struct sw_error *error);

// Fills a joint with 0: nothing given.
void sw_joint_init(struct sw_joint *joint);

// Whether the dimensions of a joint are in range and agree with its form: `SW_NOT_FOR_THIS_FORM`, `SW_INCONSISTENT`,
// `SW_HOLES_FILL_PITCH`, `SW_ROWS_OVERLAP`, `SW_HOLE_CUTS_EDGE`, `SW_RIVET_EXCEEDS_HOLE`. Every function that takes a
// joint looks at this first.
uint32_t sw_joint_validate(const struct sw_joint *joint, struct sw_error *error);

// One mode after the other: set the cursor to 0, call until `SW_END`. The cursor moves on only with success. Each call
// works the joint out anew; `sw_modes_list` does it once.
uint32_t sw_modes_next(const struct sw_joint *joint,
                       const struct sw_materials *materials,
                       const struct sw_rules *rules,
                       uint32_t *cursor,
                       struct sw_mode *mode,
                       struct sw_error *error);

// All modes into an array of the caller's: the plate alone from the outside row in, all rivets, then with plate B or
// the wide strap torn as well, then with the narrow one; at most 729. NULL and 0 ask for the number.
uint32_t sw_modes_list(const struct sw_joint *joint,
                       const struct sw_materials *materials,
                       const struct sw_rules *rules,
                       struct sw_mode *modes,
                       size_t capacity,
                       size_t *count,
                       struct sw_error *error);

// A mode in words, as in `plate tears at row 2, row 1 shears`.
uint32_t sw_mode_name(const struct sw_form *form, const struct sw_mode *mode, char *buf, size_t len, size_t *needed);

// Fills an analysis with its defaults.
void sw_analysis_init(struct sw_analysis *analysis);

// Checks a joint: all modes, efficiencies, findings. `findings` is an array of `capacity` elements, open ones first;
// NULL and 0 where they are not wanted (`SW_MAX_FINDINGS` is always enough). `count` may be NULL.
uint32_t sw_joint_check(const struct sw_joint *joint,
                        const struct sw_materials *materials,
                        const struct sw_rules *rules,
                        struct sw_analysis *analysis,
                        struct sw_finding *findings,
                        size_t capacity,
                        size_t *count,
                        struct sw_error *error);

// What a finding is about, by the number of its subject.
uint32_t sw_finding_what(uint32_t subject, char *buf, size_t len, size_t *needed);

// What to do about an open finding, by the number of its subject.
uint32_t sw_finding_advice(uint32_t subject, char *buf, size_t len, size_t *needed);

// The unit of a finding's figures, by the number of its subject; empty for pure numbers.
uint32_t sw_finding_unit(uint32_t subject, char *buf, size_t len, size_t *needed);

// Fills a brief with 0: nothing given.
void sw_brief_init(struct sw_brief *brief);

// Fills a design with its defaults.
void sw_design_init(struct sw_design *design);

// Sizes a joint by a rule book and checks it. `design` and `analysis` may be NULL; `findings` as in `sw_joint_check`.
// Where the book finds no joint: `SW_BEYOND_TABLE`, `SW_NO_STANDARD_SIZE`, `SW_NO_ADMISSIBLE_PITCH`,
// `SW_NO_ADMISSIBLE_MARGIN`; where what was given makes none, the errors of `sw_joint_validate`.
uint32_t sw_joint_size(const struct sw_brief *brief,
                       const struct sw_rules *rules,
                       struct sw_joint *joint,
                       struct sw_design *design,
                       struct sw_analysis *analysis,
                       struct sw_finding *findings,
                       size_t capacity,
                       size_t *count,
                       struct sw_error *error);

// Fills a style with its defaults.
void sw_style_init(struct sw_style *style);

// The working of a check: every step in symbols, in numbers, with its clause.
uint32_t sw_working_check(const struct sw_joint *joint,
                          const struct sw_materials *materials,
                          const struct sw_rules *rules,
                          const struct sw_style *style,
                          char *buf,
                          size_t len,
                          size_t *needed,
                          struct sw_error *error);

// The working of a sizing: every step in symbols, in numbers, with its clause.
uint32_t sw_working_size(const struct sw_brief *brief,
                         const struct sw_rules *rules,
                         const struct sw_style *style,
                         char *buf,
                         size_t len,
                         size_t *needed,
                         struct sw_error *error);

// The working of a shop sheet: the run and its pitches, the check with the fitted pitch, rivets, cuts and masses.
uint32_t sw_working_shop(const struct sw_joint *joint,
                         const struct sw_materials *materials,
                         const struct sw_rules *rules,
                         const struct sw_order *order,
                         const struct sw_style *style,
                         char *buf,
                         size_t len,
                         size_t *needed,
                         struct sw_error *error);

// Some lines of the working of a sizing, the first of all being 1, and how many there are in all (`total` may be
// NULL). The routine is run for every call: nothing is kept between them.
uint32_t sw_working_size_lines(const struct sw_brief *brief,
                               const struct sw_book *book,
                               const struct sw_style *style,
                               uint32_t first,
                               uint32_t lines,
                               char *buf,
                               size_t len,
                               size_t *needed,
                               uint32_t *total,
                               struct sw_error *error);

// The joint whose working `sw_working_size_lines` shows: that of `sw_joint_size`, bit for bit, sized by the routine that
// writes the working. An image that shows the working has it then only once, and it takes some times as long. The book
// as in `sw_working_size_lines`, all else as in `sw_joint_size`.
uint32_t sw_working_size_joint(const struct sw_brief *brief,
                               const struct sw_book *book,
                               struct sw_joint *joint,
                               struct sw_design *design,
                               struct sw_analysis *analysis,
                               struct sw_finding *findings,
                               size_t capacity,
                               size_t *count,
                               struct sw_error *error);

// Some lines of the working of a check, as in `sw_working_size_lines`.
uint32_t sw_working_check_lines(const struct sw_joint *joint,
                                const struct sw_materials *materials,
                                const struct sw_book *book,
                                const struct sw_style *style,
                                uint32_t first,
                                uint32_t lines,
                                char *buf,
                                size_t len,
                                size_t *needed,
                                uint32_t *total,
                                struct sw_error *error);

// Some lines of a sheet, as in `sw_working_size_lines`. Errors as in `sw_sheet_text`.
uint32_t sw_sheet_lines(const struct sw_sheet *sheet,
                        const struct sw_book *book,
                        const struct sw_style *style,
                        uint32_t first,
                        uint32_t lines,
                        char *buf,
                        size_t len,
                        size_t *needed,
                        uint32_t *total,
                        struct sw_error *error);

// Fills an order with its defaults: a straight seam of steel, the first head and length rule, cut to length.
void sw_order_init(struct sw_order *order);

// Fills a shop result with its defaults.
void sw_shop_init(struct sw_shop *shop);

// Fits a joint to a run: pitch, numbers, cut sizes, masses. `fitted`, the joint with that pitch, may be NULL.
uint32_t sw_shop_fit(const struct sw_joint *joint,
                     const struct sw_materials *materials,
                     const struct sw_rules *rules,
                     const struct sw_order *order,
                     struct sw_shop *shop,
                     struct sw_joint *fitted,
                     struct sw_error *error);

// The rivets row by row into an array of the caller's. NULL and 0 ask for the number.
uint32_t sw_shop_rivets(const struct sw_joint *joint,
                        const struct sw_materials *materials,
                        const struct sw_rules *rules,
                        const struct sw_order *order,
                        struct sw_rivet_line *lines,
                        size_t capacity,
                        size_t *count,
                        struct sw_error *error);

// Every hole from the datum into an array of the caller's. NULL and 0 ask for the number.
uint32_t sw_shop_holes(const struct sw_joint *joint,
                       const struct sw_materials *materials,
                       const struct sw_rules *rules,
                       const struct sw_order *order,
                       struct sw_hole *holes,
                       size_t capacity,
                       size_t *count,
                       struct sw_error *error);

// The whole shop sheet as plain text of 80 columns or as Markdown; `SW_BAD_CHOICE` for other dialects.
uint32_t sw_shop_text(const struct sw_joint *joint,
                      const struct sw_materials *materials,
                      const struct sw_rules *rules,
                      const struct sw_order *order,
                      const struct sw_style *style,
                      char *buf,
                      size_t len,
                      size_t *needed,
                      struct sw_error *error);

// A head form in words, from 0.
uint32_t sw_head_name(uint32_t head, char *buf, size_t len, size_t *needed);

// A rule for rivet lengths in words, from 0.
uint32_t sw_length_rule_name(uint32_t rule, char *buf, size_t len, size_t *needed);

// Fills a title block with its defaults: metric, a seam, no words.
void sw_title_init(struct sw_title *title);

// Plan and section on an A4 sheet, as SVG. Needs row distances and margin (`SW_MISSING`),
// here and below.
uint32_t sw_drawing_svg(const struct sw_joint *joint,
                        const struct sw_title *title,
                        char *buf,
                        size_t len,
                        size_t *needed,
                        struct sw_error *error);

// Plan and section at full size, one unit a millimetre, as DXF (R12). Three pitches, or the whole width of a tie.
uint32_t sw_drawing_dxf(const struct sw_joint *joint,
                        const struct sw_title *title,
                        char *buf,
                        size_t len,
                        size_t *needed,
                        struct sw_error *error);

// Plan and section of a seam of known length as SVG: a piece of it, with the number of pitches and the end distances
// of the shop sheet of the same order.
uint32_t sw_drawing_svg_seam(const struct sw_joint *joint,
                             const struct sw_materials *materials,
                             const struct sw_rules *rules,
                             const struct sw_order *order,
                             const struct sw_title *title,
                             char *buf,
                             size_t len,
                             size_t *needed,
                             struct sw_error *error);

// The hole pattern of a whole seam as DXF: every hole where the shop sheet of the same order has it.
uint32_t sw_drawing_dxf_seam(const struct sw_joint *joint,
                             const struct sw_materials *materials,
                             const struct sw_rules *rules,
                             const struct sw_order *order,
                             const struct sw_title *title,
                             char *buf,
                             size_t len,
                             size_t *needed,
                             struct sw_error *error);

// A group of rivets under its load on an A4 sheet, as SVG: rivets to scale with their numbers, the force on each, the
// load, centroid and instantaneous centre. Where no rivet has a hole, with the size that `sw_group_size` finds.
uint32_t sw_drawing_group(const struct sw_group *group,
                          const struct sw_rules *rules,
                          const struct sw_title *title,
                          char *buf,
                          size_t len,
                          size_t *needed,
                          struct sw_error *error);

// What an assumption is about, by its number.
uint32_t sw_assumption_what(uint32_t about, char *buf, size_t len, size_t *needed);

// The unit of an assumption's figure, by its number; empty for pure numbers and circumstances.
uint32_t sw_assumption_unit(uint32_t about, char *buf, size_t len, size_t *needed);

// How something is known (`SW_BASIS_*`), in one word as printed on sheets.
uint32_t sw_basis_word(uint32_t basis, char *buf, size_t len, size_t *needed);

// Fills circumstances with those of a new shell of drilled holes in no unusual circumstance; riveting is left open.
void sw_service_new_shell(struct sw_service *service);

// Fills circumstances with those of a boiler in service of which nothing is stated.
void sw_service_in_service(struct sw_service *service);

// Fills a shell with its defaults: new, permissible stresses.
void sw_shell_init(struct sw_shell *shell);

// Whether the figures of a shell lie in their ranges.
uint32_t sw_shell_validate(const struct sw_shell *shell, struct sw_error *error);

// The working pressure that a joint along a shell allows: its credited efficiency on the main plate, on the weaker one
// of a lap. `assumptions` lists what it rests on; NULL and 0 where that is not wanted.
uint32_t sw_shell_allow(const struct sw_joint *joint,
                        const struct sw_materials *materials,
                        const struct sw_rules *rules,
                        const struct sw_shell *shell,
                        struct sw_allowed *allowed,
                        struct sw_assumption *assumptions,
                        size_t capacity,
                        size_t *count,
                        struct sw_error *error);

// The working pressure that a seam along a shell allows when its efficiency is known.
uint32_t sw_seam_pressure(const struct sw_seam *seam,
                          const struct sw_rules *rules,
                          const struct sw_shell *shell,
                          struct sw_allowed *allowed,
                          struct sw_error *error);

// The working pressure that a girth seam allows when its efficiency is known: twice that of a seam along the shell,
// for the end pulls half as hard as the hoop.
uint32_t sw_seam_girth_pressure(const struct sw_seam *seam,
                                const struct sw_rules *rules,
                                const struct sw_shell *shell,
                                struct sw_allowed *allowed,
                                struct sw_error *error);

// The factor of safety of a shell with a seam of a form along it, by the book and the circumstances. `assumptions` as
// in `sw_shell_allow`.
uint32_t sw_shell_factor(const struct sw_shell *shell,
                         const struct sw_form *form,
                         const struct sw_rules *rules,
                         struct sw_factor *factor,
                         struct sw_assumption *assumptions,
                         size_t capacity,
                         size_t *count,
                         struct sw_error *error);

// The least shell plate of the book for an inside diameter, and the entry that asks for it. `SW_MISSING` where the
// book has none. `entry` may be NULL.
uint32_t sw_rules_least_plate(const struct sw_rules *rules,
                              double inside_mm,
                              double *plate_mm,
                              uint32_t *entry,
                              struct sw_error *error);

// The hydrostatic test pressure of the book for a working pressure, MPa; not a number where the book has no factor.
uint32_t sw_rules_test_pressure(const struct sw_rules *rules,
                                double working_mpa,
                                double *test_mpa,
                                struct sw_error *error);

// Fills a joint as found with its defaults: in service, strengths at failure, nothing known.
void sw_existing_init(struct sw_existing *existing);

// Fills a rating with its defaults.
void sw_rating_init(struct sw_rating *rating);

// Rates an existing joint: the pressure that it allows, what governs, and for how long. `joint` (as it was taken) and
// `analysis` (its modes and efficiencies) may be NULL. `SW_MISSING` where neither you nor the book give a strength or a
// factor of safety: nothing is assumed without being asked for.
uint32_t sw_existing_rate(const struct sw_existing *existing,
                          const struct sw_rules *rules,
                          struct sw_rating *rating,
                          struct sw_joint *joint,
                          struct sw_analysis *analysis,
                          struct sw_error *error);

// The findings of a rating into an array of the caller's: those on the shell (`sw_rating.findings` of them), open ones
// first, then those on the joint. NULL and 0 ask for the number; twice `SW_MAX_FINDINGS` is always enough.
uint32_t sw_existing_findings(const struct sw_existing *existing,
                              const struct sw_rules *rules,
                              struct sw_finding *findings,
                              size_t capacity,
                              size_t *count,
                              struct sw_error *error);

// What a rating rests on, figure by figure, into an array of the caller's. NULL and 0 ask for the number;
// `SW_MAX_ASSUMPTIONS` is always enough.
uint32_t sw_existing_assumptions(const struct sw_existing *existing,
                                 const struct sw_rules *rules,
                                 struct sw_assumption *assumptions,
                                 size_t capacity,
                                 size_t *count,
                                 struct sw_error *error);

// The working of a rating: every step in symbols, in numbers, with its clause; the findings, and what it rests on.
uint32_t sw_working_rate(const struct sw_existing *existing,
                         const struct sw_rules *rules,
                         const struct sw_style *style,
                         char *buf,
                         size_t len,
                         size_t *needed,
                         struct sw_error *error);

// Fills counts with 0.
void sw_tally_init(struct sw_tally *tally);

// A measure in words (`SW_MEASURE_*`), as in `lower efficiency`.
uint32_t sw_measure_what(uint32_t measure, char *buf, size_t len, size_t *needed);

// A constraint in words, as it stands after "excluded by". There are those from 0 to 6, and those of rules.
uint32_t sw_constraint_what(uint32_t constraint, char *buf, size_t len, size_t *needed);

// Fills a search with its defaults: the highest efficiency, everything open.
void sw_search_init(struct sw_search *search);

// The best joint of the grid, and behind it the best of the next best forms, into an array of the caller's
// (`SW_MAX_BEST` is always enough). Where nothing fits, the count is 0 with `SW_OK`, and `tally` says which constraint
// excluded most. `tally` may be NULL. NULL and 0 ask for the number.
uint32_t sw_search_best(const struct sw_search *search,
                        const struct sw_rules *rules,
                        struct sw_ranked *best,
                        size_t capacity,
                        size_t *count,
                        struct sw_tally *tally,
                        struct sw_error *error);

// The front of efficiency against mass into an array of the caller's: every joint of the grid that no other one
// betters in one without being worse in the other, lightest first. Needs `order`; the objective is not used. `slots`
// is memory for `capacity` of them, apart from `candidates`, and holds nothing afterwards. Where they do not do:
// `SW_NO_SPACE`, and `*count` is a number that is at least needed. `tally` may be NULL.
uint32_t sw_search_front(const struct sw_search *search,
                         const struct sw_rules *rules,
                         struct sw_front_slot *slots,
                         struct sw_candidate *candidates,
                         size_t capacity,
                         size_t *count,
                         struct sw_tally *tally,
                         struct sw_error *error);

// The brief that sizes a candidate once more: to `sw_joint_size` and `sw_working_size`.
uint32_t sw_search_brief(const struct sw_search *search,
                         const struct sw_candidate *candidate,
                         struct sw_brief *brief,
                         struct sw_error *error);

// The number of named forms, over which a search goes where none are given.
uint32_t sw_form_count(void);

// A named form by its number, from 0: laps, single straps, double straps, unequal straps, with alternate rivets
// omitted as well, each in zig-zag and in chain rows.
uint32_t sw_form_named(uint32_t number, struct sw_form *form, struct sw_error *error);

// Fills a girth seam with its defaults.
void sw_girth_init(struct sw_girth *girth);

// Checks a girth seam of a shell: the load on the end, the book's least efficiency and rows, and whether its pitch
// goes into the girth. `along` is the seam along the shell, `materials` the stresses of both, `place` one of
// `SW_GIRTH_*`, `pressure_mpa` the working pressure that is to be carried. `findings` as in `sw_joint_check`.
uint32_t sw_girth_check(const struct sw_joint *along,
                        const struct sw_materials *materials,
                        const struct sw_rules *rules,
                        const struct sw_shell *shell,
                        const struct sw_joint *girth_joint,
                        uint32_t place,
                        double pressure_mpa,
                        struct sw_girth *girth,
                        struct sw_finding *findings,
                        size_t capacity,
                        size_t *count,
                        struct sw_error *error);

// Fills a brief with its defaults: plates of whole millimetres, no girth seam.
void sw_vessel_brief_init(struct sw_vessel_brief *brief);

// Fills a vessel with its defaults.
void sw_vessel_init(struct sw_vessel *vessel);

// Designs a shell and its seams: stock thicknesses upwards, for each the joint along the shell is sized and rated, the
// first that carries the pressure is taken. That nothing fits is `SW_OK` with `fits` 0. `seam`, `girth_joint` and
// `girth` may be NULL, and are written where there is such a joint. `why` may be NULL; it says why there is no girth
// seam although one was asked for, or why a plate was refused where nothing fits, and has the status `SW_OK`
// otherwise.
uint32_t sw_vessel_design(const struct sw_vessel_brief *brief,
                          const struct sw_rules *rules,
                          struct sw_vessel *found,
                          struct sw_joint *seam,
                          struct sw_joint *girth_joint,
                          struct sw_girth *girth,
                          struct sw_error *why,
                          struct sw_error *error);

// The findings on the shell of a vessel, open ones first, then those on its girth seam, into an array of the caller's.
// `SW_END` where no plate fits. NULL and 0 ask for the number; twice `SW_MAX_FINDINGS` is always enough.
uint32_t sw_vessel_findings(const struct sw_vessel_brief *brief,
                            const struct sw_rules *rules,
                            struct sw_finding *findings,
                            size_t capacity,
                            size_t *count,
                            struct sw_error *error);

// What a vessel rests on, into an array of the caller's. `SW_END` where no plate fits. NULL and 0 ask for the number.
uint32_t sw_vessel_assumptions(const struct sw_vessel_brief *brief,
                               const struct sw_rules *rules,
                               struct sw_assumption *assumptions,
                               size_t capacity,
                               size_t *count,
                               struct sw_error *error);

// The working of a vessel: the plate taken and its seams step by step; where nothing fits, why.
uint32_t sw_working_vessel(const struct sw_vessel_brief *brief,
                           const struct sw_rules *rules,
                           const struct sw_style *style,
                           char *buf,
                           size_t len,
                           size_t *needed,
                           struct sw_error *error);

// The line of a boiler's table that governs: the least, the first of equals, counted from 0; and the hydrostatic test
// pressure of the boiler by the book, not a number where the book has no factor. `test_mpa` may be NULL. At most
// `SW_MAX_LINES` lines; `SW_MISSING` where there are none.
uint32_t sw_boiler_governing(const struct sw_boiler_line *lines,
                             size_t line_count,
                             const struct sw_rules *rules,
                             uint32_t *line,
                             double *test_mpa,
                             struct sw_error *error);

// A part of a boiler in words (`SW_PART_*`).
uint32_t sw_part_what(uint32_t part, char *buf, size_t len, size_t *needed);

// Fills a group with its defaults: no rivets, single shear, no load.
void sw_group_init(struct sw_group *group);

// Fills a group's result with its defaults.
void sw_group_found_init(struct sw_group_found *found);

// Checks a group of rivets by the elastic method: what each takes (`sw_group_rivets`), the critical rivet, its stresses,
// the load that is allowed. The rule book says which diameter counts, what a rivet in double shear is worth, and how
// close rivets may stand. `findings` as in `sw_joint_check`; their `row` is a rivet.
uint32_t sw_group_check(const struct sw_group *group,
                        const struct sw_rules *rules,
                        struct sw_group_found *found,
                        struct sw_finding *findings,
                        size_t capacity,
                        size_t *count,
                        struct sw_error *error);

// Finds the standard size of the rule book that a group of equal rivets needs, and checks the group with it. No rivet has
// a hole; without a plate or a bearing stress shear alone decides. `findings` as in `sw_group_check`.
uint32_t sw_group_size(const struct sw_group *group,
                       const struct sw_rules *rules,
                       struct sw_group_found *found,
                       struct sw_finding *findings,
                       size_t capacity,
                       size_t *count,
                       struct sw_error *error);

// What each rivet of a group takes, in the order of the rivets. Where no rivet has a hole, with the size that
// `sw_group_size` finds.
uint32_t sw_group_rivets(const struct sw_group *group,
                         const struct sw_rules *rules,
                         struct sw_rivet_load *loads,
                         size_t capacity,
                         size_t *count,
                         struct sw_error *error);

// The working of a group: of its check, or where no rivet has a hole of its size.
uint32_t sw_working_group(const struct sw_group *group,
                          const struct sw_rules *rules,
                          const struct sw_style *style,
                          char *buf,
                          size_t len,
                          size_t *needed,
                          struct sw_error *error);

// Fills a case with its defaults: nothing given.
void sw_case_init(struct sw_case *case_);

// Fills what a search found with its defaults.
void sw_reconciled_init(struct sw_reconciled *reconciled);

// Quantities of a case by name, as the routine works them, in the unit of each (`sw_quantity_unit`); not a number
// where it has none. `values` is an array of `name_count` elements, at most `SW_MAX_FIGURES`.
uint32_t sw_case_values(const struct sw_case *case_,
                        const struct sw_rules *rules,
                        const struct sw_name *names,
                        size_t name_count,
                        double *values,
                        struct sw_error *error);

// Finds the conventions that reproduce stated figures: every single edit of the catalogue, then every pair. Those that
// do come first in the array, then those that may do so by chance (`2 * SW_MAX_EXPLANATIONS` are always enough). NULL
// and 0 ask for the number.
uint32_t sw_case_reconcile(const struct sw_case *case_,
                           const struct sw_rules *rules,
                           const struct sw_figure *figures,
                           size_t figure_count,
                           struct sw_reconciled *reconciled,
                           struct sw_explanation *explanations,
                           size_t capacity,
                           size_t *count,
                           struct sw_error *error);

// The same in words: what reproduces the figures, what each would be as the book stands, and, where nothing does, what
// comes nearest.
uint32_t sw_case_reconcile_text(const struct sw_case *case_,
                                const struct sw_rules *rules,
                                const struct sw_figure *figures,
                                size_t figure_count,
                                char *buf,
                                size_t len,
                                size_t *needed,
                                struct sw_error *error);

// How many conventions the catalogue has.
uint32_t sw_convention_count(void);

// A convention in words, by its number, as they follow "reproduced with".
uint32_t sw_convention_words(uint32_t number, char *buf, size_t len, size_t *needed);

// Whether a convention is a slip, which nobody would defend (1), or a habit (0).
uint32_t sw_convention_is_slip(uint32_t number, uint32_t *slip, struct sw_error *error);

// The number of a quantity by its symbol, as in `Ps`, `J` or `d`: the first of that symbol. Numbers may change with
// the version of the library, symbols do not. `SW_UNKNOWN_KEY` where there is none.
uint32_t sw_quantity_find(const char *symbol, uint32_t *quantity, struct sw_error *error);

// The symbol of a quantity, by its number.
uint32_t sw_quantity_symbol(uint32_t number, char *buf, size_t len, size_t *needed);

// A quantity in words, by its number.
uint32_t sw_quantity_what(uint32_t number, char *buf, size_t len, size_t *needed);

// The unit of a quantity, by its number; empty for pure numbers.
uint32_t sw_quantity_unit(uint32_t number, char *buf, size_t len, size_t *needed);

// Draws an exercise. `joint` is the joint that is given, or the one to be found; `brief` is what is given where the
// joint is to be found (`SW_TASK_SIZE`), and left alone otherwise. Both may be NULL. `SW_NO_PROBLEM` where the effect
// cannot be made to decide in this form, or is not taught by this task.
uint32_t sw_exercise_draw(const struct sw_exercise *exercise,
                          const struct sw_rules *rules,
                          struct sw_materials *materials,
                          struct sw_joint *joint,
                          struct sw_brief *brief,
                          struct sw_error *error);

// What an exercise asks for, in the order of the work, and the answers, into an array of the caller's (`SW_MAX_ASKED`
// is always enough). NULL and 0 ask for the number.
uint32_t sw_exercise_key(const struct sw_exercise *exercise,
                         const struct sw_rules *rules,
                         struct sw_asked *asked,
                         size_t capacity,
                         size_t *count,
                         struct sw_error *error);

// Marks a student's answers, in any order; figures that were not asked for are left out of account. One mark for each
// figure of the key, in its order. Credited are `SW_MARK_RIGHT` and `SW_MARK_CARRIED_OVER`. NULL and 0 ask for the
// number.
uint32_t sw_exercise_mark(const struct sw_exercise *exercise,
                          const struct sw_rules *rules,
                          const struct sw_figure *answers,
                          size_t answer_count,
                          struct sw_mark *marks,
                          size_t capacity,
                          size_t *count,
                          struct sw_error *error);

// The marks of a student's answers as a sheet.
uint32_t sw_exercise_marks_text(const struct sw_exercise *exercise,
                                const struct sw_rules *rules,
                                const struct sw_figure *answers,
                                size_t answer_count,
                                const struct sw_style *style,
                                char *buf,
                                size_t len,
                                size_t *needed,
                                struct sw_error *error);

// The full working of an exercise.
uint32_t sw_exercise_solution(const struct sw_exercise *exercise,
                              const struct sw_rules *rules,
                              const struct sw_style *style,
                              char *buf,
                              size_t len,
                              size_t *needed,
                              struct sw_error *error);

// A sheet of exercises, for the class or for the teacher (`SW_FOR_*`). Each is drawn anew as it is written.
uint32_t sw_exercises_text(const struct sw_exercise *exercises,
                           size_t exercise_count,
                           const struct sw_rules *rules,
                           uint32_t audience,
                           const struct sw_style *style,
                           char *buf,
                           size_t len,
                           size_t *needed,
                           struct sw_error *error);

// Fills tolerances with 0: all dimensions exact.
void sw_tolerances_init(struct sw_tolerances *tolerances);

// Fills a worst case with its defaults.
void sw_worst_init(struct sw_worst *worst);

// The exact derivatives of a joint's efficiencies and strength to each of its inputs, into an array of the caller's
// (`SW_MAX_INPUTS` is always enough). NULL and 0 ask for the number.
uint32_t sw_joint_slopes(const struct sw_joint *joint,
                         const struct sw_materials *materials,
                         const struct sw_rules *rules,
                         struct sw_slope *lines,
                         size_t capacity,
                         size_t *count,
                         struct sw_error *error);

// The same as a Markdown table, which reads as plain text too: what one per cent more of each input does to the
// efficiencies and to the strength, in per cent. Inputs that do nothing are left out.
uint32_t sw_joint_slopes_text(const struct sw_joint *joint,
                              const struct sw_materials *materials,
                              const struct sw_rules *rules,
                              char *buf,
                              size_t len,
                              size_t *needed,
                              struct sw_error *error);

// The worst case of a measure (`SW_TARGET_*`) when each dimension may lie anywhere within its tolerance.
uint32_t sw_joint_worst(const struct sw_joint *joint,
                        const struct sw_materials *materials,
                        const struct sw_rules *rules,
                        const struct sw_tolerances *tolerances,
                        uint32_t target,
                        struct sw_worst *worst,
                        struct sw_error *error);

// Sizes all columns, at most `SW_MAX_COLUMNS`, and puts what they come to in order (`SW_SORT_*`). One that cannot be
// sized keeps its status and is part of the comparison. NULL and 0 ask for the number. Needs about 60 KiB of stack.
uint32_t sw_columns_compare(const struct sw_column *columns,
                            size_t column_count,
                            uint32_t sort,
                            struct sw_compared *figures,
                            size_t capacity,
                            size_t *count,
                            struct sw_error *error);

// The comparison as a document: the columns, the table, what governs, and where and by which clause each column parts
// from the first one.
uint32_t sw_columns_text(const struct sw_column *columns,
                         size_t column_count,
                         uint32_t sort,
                         const struct sw_style *style,
                         char *buf,
                         size_t len,
                         size_t *needed,
                         struct sw_error *error);

// Where a column (from 0) parts from the first one in a section of the sizing, from 0 (`sw_section_heading`). `SW_END`
// where it does not.
uint32_t sw_columns_parting(const struct sw_column *columns,
                            size_t column_count,
                            uint32_t column,
                            uint32_t section,
                            struct sw_parting *parting,
                            struct sw_error *error);

// The heading of a section in which columns may part, from 0; `SW_BAD_CHOICE` beyond the last.
uint32_t sw_section_heading(uint32_t section, char *buf, size_t len, size_t *needed);

// The lettered modes of a joint into an array of the caller's (`SW_MAX_LETTERS` is always enough): A the solid strip,
// B tearing at the outer row, C all rivets in shear, then as the code goes on. What needs a bearing stress or a strap
// that was not given is left out. NULL and 0 ask for the number.
uint32_t sw_letters_list(const struct sw_joint *joint,
                         const struct sw_materials *materials,
                         const struct sw_rules *rules,
                         struct sw_letter *list,
                         size_t capacity,
                         size_t *count,
                         struct sw_error *error);

// A lettered mode in words.
uint32_t sw_letter_name(const struct sw_form *form,
                        const struct sw_letter *letter,
                        char *buf,
                        size_t len,
                        size_t *needed);

// The masses of one strip of a seam without ends. The run of the order is not used. Needs row distances, margin and
// straps.
uint32_t sw_joint_masses(const struct sw_joint *joint,
                         const struct sw_materials *materials,
                         const struct sw_order *order,
                         struct sw_masses *masses,
                         struct sw_error *error);

// Reads a number as people write it: `12.5`, `12,5`, `1 5/8`, `3e4`; `SW_UNREADABLE` where it is none.
uint32_t sw_number_parse(const char *text, double *value, struct sw_error *error);

// A number with exactly so many decimals (0 to 9), as in `2.50`; `mark` is one of `SW_MARK_*`. `SW_NOT_FINITE` and
// `SW_TOO_LARGE` (more digits than are certain) where there is nothing to print, here and below.
uint32_t sw_number_fixed(double value, uint32_t decimals, uint32_t mark, char *buf, size_t len, size_t *needed);

// A number with at most so many decimals (0 to 9), without zeros at the end: 2.50 is `2.5`, 3.00 is `3`.
uint32_t sw_number_plain(double value, uint32_t decimals, uint32_t mark, char *buf, size_t len, size_t *needed);

// A number to so many significant figures (1 to 15), in plain notation: 152578.1 to 4 figures is `152600`.
uint32_t sw_number_significant(double value, uint32_t figures, uint32_t mark, char *buf, size_t len, size_t *needed);

// A length in millimetres as inches with a fraction, as in `1 5/8`; in four decimals where it is none of that
// denominator (a power of two up to 128).
uint32_t sw_length_fraction(double mm, uint32_t denominator, char *buf, size_t len, size_t *needed);

// The number of an input by its key, as in `pitch` or `safety_factor`; the same as in `sw_error.field`.
// `SW_UNKNOWN_KEY` where there is none.
uint32_t sw_field_find(const char *key, uint32_t *number, struct sw_error *error);

// The least and the greatest value of an input, in its unit (`sw_field_unit`). Both 0: it is no number.
uint32_t sw_field_bounds(uint32_t number, double *least, double *greatest, struct sw_error *error);

// An input in words, by its number.
uint32_t sw_field_what(uint32_t number, char *buf, size_t len, size_t *needed);

// The unit of an input, by its number; empty for pure numbers.
uint32_t sw_field_unit(uint32_t number, char *buf, size_t len, size_t *needed);

// Fills a sheet with its defaults: of nothing yet, all lines left to be filled in.
void sw_sheet_init(struct sw_sheet *sheet);

// The sheet that someone signs: who and what, the answer in short, inputs and how they are known, the joint, every
// dimension with its rule, all failure modes, findings, figures from memory, cautions, lines for names. It is complete
// or refused: errors of the routine (`sw_joint_check`, `sw_joint_size`, `sw_existing_rate`), `SW_BAD_POINTER` where
// it is of nothing or of several things, `SW_INCONSISTENT` (see `ultimate`), `SW_TOO_MANY` (see `known_count`). Needs
// about 50 KiB of stack.
uint32_t sw_sheet_text(const struct sw_sheet *sheet,
                       const struct sw_rules *rules,
                       const struct sw_style *style,
                       char *buf,
                       size_t len,
                       size_t *needed,
                       struct sw_error *error);

// The hash of a sheet's inputs, which it prints as 16 hexadecimal digits: FNV-1a over the text of `sw_sheet_inputs`.
// Equal inputs have an equal hash, in every language and unit; names, date and style are not in it. Errors as in
// `sw_sheet_text`, for inputs outside their range and for a rating that cannot be computed.
uint32_t sw_sheet_hash(const struct sw_sheet *sheet,
                       const struct sw_rules *rules,
                       uint64_t *hash,
                       struct sw_error *error);

// The text that `sw_sheet_hash` reads, for those who want to hash or to compare it themselves: a line for each input
// and for each entry of the book that is not silent, in mm and MPa with nine decimals.
uint32_t sw_sheet_inputs(const struct sw_sheet *sheet,
                         const struct sw_rules *rules,
                         char *buf,
                         size_t len,
                         size_t *needed,
                         struct sw_error *error);

// Fills a sweep with its defaults: no rows, nothing given.
void sw_sweep_init(struct sw_sweep *sweep);

// Fills the places for results with their defaults: nothing wanted.
void sw_sweep_results_init(struct sw_sweep_results *results);

// Works out `count` rows from row `from` (from 0) on, each bit for bit as `sw_joint_check` does: a program that wants to
// be able to stop calls it piece by piece. A row that cannot be computed has its status and loses no other. A column of
// another length than the sweep's rows is an error, as is a value of all rows outside its range, or what does not belong
// to the form, or rows beyond the last (`SW_TOO_LARGE`). Results are written into `results`, which is only read itself.
uint32_t sw_sweep_run(const struct sw_sweep *sweep,
                      const struct sw_rules *rules,
                      size_t from,
                      size_t count,
                      const struct sw_sweep_results *results,
                      struct sw_error *error);

// The strengths of modes by their numbers, N for the whole strip, for `count` rows from row `from` on: first all rows of
// the first mode, then of the next. Not a number where the row could not be computed. `strengths_n` has room for
// `mode_count` times `count` numbers, apart from the inputs.
uint32_t sw_sweep_strengths(const struct sw_sweep *sweep,
                            const struct sw_rules *rules,
                            const uint16_t *modes,
                            size_t mode_count,
                            size_t from,
                            size_t count,
                            double *strengths_n,
                            struct sw_error *error);

// The joint of a row (from 0) and its stresses, to look closer at it; or the error that its status stands for.
uint32_t sw_sweep_joint(const struct sw_sweep *sweep,
                        const struct sw_rules *rules,
                        size_t row,
                        struct sw_joint *joint,
                        struct sw_materials *materials,
                        struct sw_error *error);

// How many modes joints of a form have; `straps`: 1 where the thickness of straps is given, otherwise 0.
uint32_t sw_sweep_mode_count(const struct sw_form *form, uint32_t straps, uint32_t *count, struct sw_error *error);

// A mode by its number in a sweep, from 0, in the order of `sw_modes_next`: what tears. How the rivets fail and the
// strength depend on the joint; they are those of whole rivets and 0 here. Its name: `sw_mode_name`.
uint32_t sw_sweep_mode(const struct sw_form *form,
                       uint32_t straps,
                       uint32_t number,
                       struct sw_mode *mode,
                       struct sw_error *error);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* SEAMWRIGHT_H */
