/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fields.h"

G_BEGIN_DECLS

/* Entry and display of what a field holds.
 *
 * An entry is a sum of products of numbers and units: "38 mm", "1 1/2\"", "5' 6 3/8\"", "2*1220-45", "12 lb 4 oz",
 * "(1220-45)/2 mm", "1,5 m" as well as "1.5 m". A comma is a decimal sign, never a thousands mark. A number without a unit
 * takes the unit that the field is shown in (for lengths: millimetres, or inches; for shares: per cent); in "2*1220-45" that goes for the
 * sum. A pint, quart or gallon is that of the United States unless it says imp. The dash of 5'-6" and 1-1/2, which some read as 'and' and
 * some as 'less', is refused. Factors: NIST SP 811 (2008), appendix B, where not exact by definition. The grammar is in expression.h. */

typedef enum
{
  GB_QUANTITY_ERROR_SYNTAX,    /* not a number, or an unfinished sum */
  GB_QUANTITY_ERROR_UNIT,      /* no such unit */
  GB_QUANTITY_ERROR_DIMENSION, /* a unit of something else: kilograms for a length */
  GB_QUANTITY_ERROR_RANGE,     /* not finite */
} GbQuantityError;
#define GB_QUANTITY_ERROR (gb_quantity_error_quark ())
GQuark gb_quantity_error_quark (void);

/* Reads @text as a quantity of @dim (one that is kept as a real number). @units decides the unit of a bare number. Gives SI.
 * An error is a sentence that says what is wrong and what is expected, with an example; it does not name the field. */
gboolean gb_quantity_parse (const char *text, GbDimension dim, GbUnits units, double *value, GError **error);

/* Shows @value, with its unit: three significant figures for masses (grams below 100 g, ounces below a pound), whole millimetres (tenths
 * below 10 mm) or sixteenths of an inch for lengths, and so on. A figure before the decimal sign is never rounded away; a
 * length below a ten-millionth of a millimetre is nothing. NAN gives an en
 * dash. Uses the locale's decimal sign. What is shown can be entered again. Free the result. */
char *gb_quantity_format (double value, GbDimension dim, GbUnits units);

/* The same with enough digits that gb_quantity_parse() gives @value back (to 1 part in 1e12), for an editor's start. NAN gives "".
 */
char *gb_quantity_format_exact (double value, GbDimension dim, GbUnits units);

/* Shows @value without its unit, for a column whose heading has gb_quantity_unit(). */
char *gb_quantity_format_bare (double value, GbDimension dim, GbUnits units);

/* The unit that @dim is shown in, as written on screen: "mm", "kg"; "" where there is none. Static. */
const char *gb_quantity_unit (GbDimension dim, GbUnits units);
/* SI over that unit: 0.001 for mm. Temperatures in Fahrenheit are not proportional; for those use the functions above. */
double gb_quantity_factor (GbDimension dim, GbUnits units);

/* Entry and display of any field of any storage, by its dimension: quantities as above, money in the build's currency, dates as
 * YYYY-MM-DD or the locale's order, choices by name or label, flags as yes or no. References are not read here: whoever has
 * the boat looks names up. What was typed is kept in the value's 'typed' where it says more than the number: another unit, a fraction, a sum,
 * more digits than are shown; tidied, with a point for a decimal comma, and with the units that were meant written out, so that it means
 * the same when the build's units change. The value is checked as by gb_field_check(), with limits said in the build's units. Errors name
 * the field. An empty text, or the dash that unknown is shown as, gives unknown; for a choice, what a new record holds. */
gboolean gb_field_parse (const GbField *field, const char *text, const GbBuild *build, GbValue *value, GError **error);

/* Shows a field of a record: what was typed where that is kept and still gives the value, but for a sum what it comes to; else
 * gb_quantity_format() and its like. References give "" here: whoever has the boat looks names up. Free the result. */
char *gb_field_display (const GbField *field, const GbRecord *record, const GbBuild *build);
/* What an editor starts with: what was typed, a sum too; else all digits. */
char *gb_field_edit_text (const GbField *field, const GbRecord *record, const GbBuild *build);

/* Dates: Julian days; YYYY-MM-DD, and the locale's own order for entry. */
char *gb_date_format (gint64 julian); /* YYYY-MM-DD; "" for 0 */
gboolean gb_date_parse (const char *text, gint64 *julian, GError **error);

G_END_DECLS
