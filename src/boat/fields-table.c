/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The field table itself. The order of the fields is the order in which a builder measures, and that of the columns. */

#include "fields-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const GbChoice unit_choices[] = { { "metric", N_ ("Metres and kilograms") },
                                         { "feet", N_ ("Feet, inches and pounds") },
                                         { NULL, NULL } };
static const GbChoice water_choices[] = {
  { "fresh", N_ ("Fresh") }, { "salt", N_ ("Salt") }, { "given", N_ ("Given density") }, { NULL, NULL }
};
static const GbChoice family_choices[] = { { "wood", N_ ("Wood") },           { "plywood", N_ ("Plywood") },
                                           { "foam", N_ ("Foam") },           { "metal", N_ ("Metal") },
                                           { "plastic", N_ ("Plastic") },     { "resin", N_ ("Resin") },
                                           { "fibre", N_ ("Fibre and cloth") }, { "filler", N_ ("Filler") },
                                           { "glue", N_ ("Glue") },           { "paint", N_ ("Paint and varnish") },
                                           { "rope", N_ ("Rope") },           { "sailcloth", N_ ("Sailcloth") },
                                           { "rubber", N_ ("Rubber") },       { "other", N_ ("Other") },
                                           { NULL, NULL } };
static const GbChoice measure_choices[] = { { "density", N_ ("Mass per volume") },
                                            { "wood", N_ ("Wood, by gravity and moisture") },
                                            { "areal", N_ ("Mass per area") },
                                            { "linear", N_ ("Mass per length") },
                                            { NULL, NULL } };
static const GbChoice form_choices[] = { { "sheet", N_ ("Sheet") }, { "length", N_ ("Length") },
                                         { "block", N_ ("Block") }, { "tin", N_ ("Tin") },
                                         { "piece", N_ ("Piece") }, { NULL, NULL } };
static const GbChoice section_choices[] = { { "rectangle", N_ ("Rectangle") },
                                            { "round", N_ ("Round") },
                                            { "tube", N_ ("Tube") },
                                            { "linear", N_ ("Mass per length") },
                                            { NULL, NULL } };
static const GbChoice origin_choices[] = {
  { "shop", N_ ("From a shop") }, { "saved", N_ ("Saved") }, { "found", N_ ("Found") }, { NULL, NULL }
};
static const GbChoice kind_choices[] = { { "part", N_ ("Part") }, { "group", N_ ("Group") }, { NULL, NULL } };
static const GbChoice state_choices[] = { { "planned", N_ ("Planned") },
                                          { "bought", N_ ("Bought") },
                                          { "made", N_ ("Made") },
                                          { "fitted", N_ ("Fitted") },
                                          { NULL, NULL } };
static const GbChoice takeoff_choices[] = { { "sheet", N_ ("Sheet") },     { "length", N_ ("Length") },
                                            { "block", N_ ("Block") },     { "skin", N_ ("Skin of a hull") },
                                            { "coating", N_ ("Coating") }, { "count", N_ ("Count") },
                                            { "lump", N_ ("Lump") },       { NULL, NULL } };
static const GbChoice basis_choices[] = { { "by-takeoff", N_ ("By take-off") },
                                          { "estimated", N_ ("Estimated") },
                                          { "calculated", N_ ("Calculated") },
                                          { "weighed", N_ ("Weighed") },
                                          { NULL, NULL } };
static const GbChoice extent_choices[] = { { "all", N_ ("All of it") },
                                           { "below", N_ ("Below a height") },
                                           { "above", N_ ("Above a height") },
                                           { NULL, NULL } };
static const GbChoice coating_choices[] = { { "paint", N_ ("Paint, varnish or oil") },
                                            { "cloth", N_ ("Cloth and resin") },
                                            { NULL, NULL } };
static const GbChoice on_scale_choices[] = { { "all", N_ ("All of them") }, { "one", N_ ("One of them") }, { NULL, NULL } };
static const GbChoice hull_choices[] = { { "stations", N_ ("Stations and offsets") },
                                         { "block", N_ ("Block") },
                                         { "pipe", N_ ("Round pipe") },
                                         { "prism", N_ ("Prism from an outline") },
                                         { NULL, NULL } };
static const GbChoice edge_choices[] = { { "open", N_ ("Open: its edge must stay dry") },
                                         { "closed", N_ ("Closed all over") },
                                         { NULL, NULL } };
static const GbChoice load_choices[] = { { "person", N_ ("Person") },
                                         { "gear", N_ ("Gear") },
                                         { "water", N_ ("Water or other liquid") },
                                         { "ballast", N_ ("Ballast") },
                                         { "motor", N_ ("Motor") },
                                         { "cargo", N_ ("Cargo") },
                                         { "pull", N_ ("Rope's pull or push down") },
                                         { "other", N_ ("Other") },
                                         { NULL, NULL } };
static const GbChoice posture_choices[] = { { "centre", N_ ("z is the person's centre") },
                                            { "sitting", N_ ("Sitting: z is the seat") },
                                            { "standing", N_ ("Standing: z is what the feet stand on") },
                                            { NULL, NULL } };
static const GbChoice line_choices[] = { { "stock", N_ ("Stock") },       { "part", N_ ("A part") },
                                         { "tools", N_ ("Tools") },       { "delivery", N_ ("Delivery") },
                                         { "other", N_ ("Other") },       { NULL, NULL } };

/* A boat that one person builds at home stays well inside these. */
#define MAX_LENGTH 100.0
#define MAX_MASS 1.0e6
#define MAX_COUNT 1.0e6
#define MAX_MONEY 1.0e12
#define MAX_DENSITY 25000.0
#define DAY_1900 693596.0 /* 1 January 1900 */
#define DAY_2200 803169.0 /* 1 January 2200 */

/* Each macro has a twin with a trailing underscore, so that "P (name)" unfolds into three arguments first. */
#define AT(T, m) G_STRUCT_OFFSET (T, m)
#define TEXT(...) TEXT_ (__VA_ARGS__)
#define TEXT_(K, T, m, l, h) { K, #m, GB_DIM_TEXT, AT (T, m), l, h, 0, 1000, NAN, 0, NULL, GB_N_RECORDS, 0 }
#define NAME(...) NAME_ (__VA_ARGS__)
#define NAME_(K, T, m, l, h)                                                                                    \
  { K, #m, GB_DIM_TEXT, AT (T, m), l, h, 0, 1000, NAN, GB_FIELD_REQUIRED, NULL, GB_N_RECORDS, 0 }
#define NOTE(...) NOTE_ (__VA_ARGS__)
#define NOTE_(K, T, m, l, h) { K, #m, GB_DIM_NOTE, AT (T, m), l, h, 0, 100000, NAN, 0, NULL, GB_N_RECORDS, 0 }
#define CHOICE(...) CHOICE_ (__VA_ARGS__)
#define CHOICE_(K, T, m, l, h, c, s, w) { K, #m, GB_DIM_CHOICE, AT (T, m), l, h, 0, 0, s, 0, c, GB_N_RECORDS, w }
#define FLAG(...) FLAG_ (__VA_ARGS__)
#define FLAG_(K, T, m, l, h) { K, #m, GB_DIM_FLAG, AT (T, m), l, h, 0, 1, 0, 0, NULL, GB_N_RECORDS, 0 }
#define REF(...) REF_ (__VA_ARGS__)
#define REF_(K, T, m, l, h, r, w) { K, #m, GB_DIM_REF, AT (T, m), l, h, 0, 0, NAN, 0, NULL, r, w }
#define DATE(...) DATE_ (__VA_ARGS__)
#define DATE_(K, T, m, l, h) { K, #m, GB_DIM_DATE, AT (T, m), l, h, DAY_1900, DAY_2200, NAN, 0, NULL, GB_N_RECORDS, 0 }
#define MONEY(...) MONEY_ (__VA_ARGS__)
#define MONEY_(K, T, m, l, h, lo) { K, #m, GB_DIM_MONEY, AT (T, m), l, h, lo, MAX_MONEY, NAN, 0, NULL, GB_N_RECORDS, 0 }
#define REAL(...) REAL_ (__VA_ARGS__)
#define REAL_(K, T, m, d, l, h, lo, hi, s, f, w) { K, #m, d, AT (T, m), l, h, lo, hi, s, f, NULL, GB_N_RECORDS, w }
#define SIZE(...) SIZE_ (__VA_ARGS__)
#define SIZE_(K, T, m, l, h, w) REAL (K, T, m, GB_DIM_LENGTH, l, h, 0, MAX_LENGTH, NAN, GB_FIELD_ABOVE_MIN, w)
#define PLACE(...) PLACE_ (__VA_ARGS__)
#define PLACE_(K, T, m, l, h, s) REAL (K, T, m, GB_DIM_LENGTH, l, h, -MAX_LENGTH, MAX_LENGTH, s, 0, 0)
#define OUTLINE(...) OUTLINE_ (__VA_ARGS__)
#define OUTLINE_(K, T, m, l, h, w) { K, #m, GB_DIM_OUTLINE, AT (T, m), l, h, 0, 1000000, NAN, 0, NULL, GB_N_RECORDS, w }

#define ON(v) (1u << (v))

#define B(m) GB_RECORD_BUILD, GbBuild, m
static const GbField build_fields[] = {
  NAME (B (name), N_ ("Name"), N_ ("What the boat is called.")),
  NOTE (B (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
  TEXT (B (currency), N_ ("Currency"), N_ ("Three letters, as banks write it: EUR, GBP, USD.")),
  CHOICE (B (units), N_ ("Units"), N_ ("How measures are shown; they may be entered either way."), unit_choices, 0, 0),
  REAL (B (target_mass), GB_DIM_MASS, N_ ("Target mass"), N_ ("What the finished boat, empty, should weigh."), 0, MAX_MASS,
        NAN, GB_FIELD_ABOVE_MIN, 0),
  CHOICE (B (water), N_ ("Water"), N_ ("The water that she floats in."), water_choices, 0, 0),
  REAL (B (salinity), GB_DIM_SALINITY, N_ ("Salinity"), N_ ("Grams of salt in a kilogram of water; the open sea has 35."), 0,
        42, 35, 0, ON (GB_WATER_SALT)),
  REAL (B (temperature), GB_DIM_TEMPERATURE, N_ ("Temperature"), N_ ("Of the water."), -2, 40, 15, 0,
        ON (GB_WATER_SALT) | ON (GB_WATER_FRESH)),
  REAL (B (water_density), GB_DIM_DENSITY, N_ ("Water density"), N_ ("Mass of a cubic metre of the water."), 900, 1300, NAN, 0,
        ON (GB_WATER_GIVEN)),
  REAL (B (freeboard), GB_DIM_LENGTH, N_ ("Least freeboard"),
        N_ ("How far the lowest edge must stay above the water."), 0, 10, 0.15, 0, 0),
  REAL (B (margin_estimated), GB_DIM_RATIO, N_ ("Margin on estimated"),
        N_ ("Added to what is only estimated, for what is not listed yet."), 0, 2, 0.15, 0, 0),
  REAL (B (margin_calculated), GB_DIM_RATIO, N_ ("Margin on calculated"),
        N_ ("Added to what is calculated, for what is not listed yet."), 0, 2, 0.05, 0, 0),
  REAL (B (margin_weighed), GB_DIM_RATIO, N_ ("Margin on weighed"), N_ ("Added to what has been weighed."), 0, 2, 0, 0, 0),
  REAL (B (margin_mass), GB_DIM_MASS, N_ ("Margin, fixed"), N_ ("A mass set aside on top of that."), 0, MAX_MASS, 0, 0, 0),
  REAL (B (spread_estimated), GB_DIM_RATIO, N_ ("Spread of an estimate"),
        N_ ("Standard deviation of an estimated amount, where a part says none."), 0, 2, 0.15, 0, 0),
  REAL (B (spread_calculated), GB_DIM_RATIO, N_ ("Spread of a calculation"),
        N_ ("Standard deviation of a calculated amount, where a part says none; the material's comes on top."), 0, 2, 0.03, 0,
        0),
  REAL (B (place_spread), GB_DIM_LENGTH, N_ ("Spread of a place"),
        N_ ("Standard deviation of a part's place, where the part says none."), 0, 10, 0.01, 0, 0),
  REAL (B (cutting_allowance), GB_DIM_RATIO, N_ ("Cutting allowance"),
        N_ ("What is lost in cutting sheets, lengths and blocks, as a share of what is needed."), 0, 5, 0.15, 0, 0),
  MONEY (B (cost_allowance), N_ ("Cost allowance"), N_ ("Money set aside for what is not listed yet."), 0),
};

#define C(m) GB_RECORD_CATEGORY, GbCategory, m
static const GbField category_fields[] = {
  NAME (C (name), N_ ("Name"), N_ ("A head of the budget: timber, resin, rig.")),
  MONEY (C (budget), N_ ("Budget"), N_ ("What may be spent under this head."), 0),
};

#define M(m) GB_RECORD_MATERIAL, GbMaterial, m
static const GbField material_fields[] = {
  NAME (M (name), N_ ("Name"), N_ ("What the material is called.")),
  CHOICE (M (family), N_ ("Family"), N_ ("What sort of material it is."), family_choices, GB_FAMILY_OTHER, 0),
  CHOICE (M (measure), N_ ("Known by"), N_ ("How its mass is known: per volume, area or length."), measure_choices, 0, 0),
  REAL (M (density), GB_DIM_DENSITY, N_ ("Density"), N_ ("Mass of a cubic metre."), 0, MAX_DENSITY, NAN, GB_FIELD_ABOVE_MIN,
        ON (GB_MEASURE_DENSITY) | ON (GB_MEASURE_AREAL) | ON (GB_MEASURE_LINEAR)),
  REAL (M (basic_gravity), GB_DIM_COUNT, N_ ("Basic specific gravity"),
        N_ ("Oven-dry mass over green volume, against water."), 0, 1.5, NAN, GB_FIELD_ABOVE_MIN, ON (GB_MEASURE_WOOD)),
  REAL (M (moisture), GB_DIM_RATIO, N_ ("Moisture content"), N_ ("Mass of water over oven-dry mass: 12 % indoors."), 0, 3, 0.12,
        0, ON (GB_MEASURE_WOOD)),
  REAL (M (areal_mass), GB_DIM_AREAL, N_ ("Mass per area"), N_ ("Mass of a square metre."), 0, 1000, NAN, GB_FIELD_ABOVE_MIN,
        ON (GB_MEASURE_AREAL)),
  REAL (M (linear_mass), GB_DIM_LINEAR, N_ ("Mass per length"), N_ ("Mass of one metre."), 0, 1000, NAN, GB_FIELD_ABOVE_MIN,
        ON (GB_MEASURE_LINEAR)),
  REAL (M (spread), GB_DIM_RATIO, N_ ("Spread"), N_ ("Standard deviation from piece to piece, as a share."), 0, 1, NAN, 0, 0),
  TEXT (M (source), N_ ("Source"), N_ ("Where the figure comes from.")),
  NOTE (M (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define SA(m) GB_RECORD_SAMPLE, GbSample, m
static const GbField sample_fields[] = {
  DATE (SA (date), N_ ("Date"), N_ ("When it was weighed.")),
  REAL (SA (mass), GB_DIM_MASS, N_ ("Scale says"), N_ ("Mass of the piece, or of all the pieces."), 0, MAX_MASS, NAN,
        GB_FIELD_ABOVE_MIN, 0),
  REAL (SA (mass_sd), GB_DIM_MASS, N_ ("Scale's spread"), N_ ("Standard deviation of the scale's reading."), 0, MAX_MASS, NAN, 0,
        0),
  SIZE (SA (length), N_ ("Length"), N_ ("Of the piece."), 0),
  SIZE (SA (width), N_ ("Width"), N_ ("Of the piece; a rope or a rod has none."), 0),
  SIZE (SA (thickness), N_ ("Thickness"), N_ ("Of the piece; a cloth has none."), 0),
  REAL (SA (pieces), GB_DIM_COUNT, N_ ("Pieces"), N_ ("How many lay on the scale."), 0, MAX_COUNT, 1, GB_FIELD_ABOVE_MIN, 0),
  NOTE (SA (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define S(m) GB_RECORD_STOCK, GbStock, m
static const GbField stock_fields[] = {
  NAME (S (name), N_ ("Name"), N_ ("As the shop calls it.")),
  CHOICE (S (form), N_ ("Form"), N_ ("How it comes."), form_choices, 0, 0),
  REF (S (material), N_ ("Material"), N_ ("What it is made of."), GB_RECORD_MATERIAL, 0),
  SIZE (S (length), N_ ("Length"), N_ ("Of one piece."), ON (GB_FORM_SHEET) | ON (GB_FORM_LENGTH) | ON (GB_FORM_BLOCK)),
  SIZE (S (width), N_ ("Width"), N_ ("Of one piece."), ON (GB_FORM_SHEET) | ON (GB_FORM_LENGTH) | ON (GB_FORM_BLOCK)),
  SIZE (S (thickness), N_ ("Thickness"), N_ ("Of one piece."), ON (GB_FORM_SHEET) | ON (GB_FORM_LENGTH) | ON (GB_FORM_BLOCK)),
  CHOICE (S (section), N_ ("Section"), N_ ("Shape of the cross-section."), section_choices, 0, ON (GB_FORM_LENGTH)),
  SIZE (S (diameter), N_ ("Diameter"), N_ ("Outside diameter."), ON (GB_FORM_LENGTH)),
  SIZE (S (wall), N_ ("Wall"), N_ ("Thickness of the tube's wall."), ON (GB_FORM_LENGTH)),
  REAL (S (linear_mass), GB_DIM_LINEAR, N_ ("Mass per length"), N_ ("Mass of one metre."), 0, 1000, NAN, GB_FIELD_ABOVE_MIN,
        ON (GB_FORM_LENGTH)),
  REAL (S (volume), GB_DIM_VOLUME, N_ ("Contents"), N_ ("Volume of what is in one tin."), 0, 1000, NAN, GB_FIELD_ABOVE_MIN,
        ON (GB_FORM_TIN)),
  REAL (S (mass), GB_DIM_MASS, N_ ("Mass"), N_ ("Of one piece, or of what is in one tin."), 0, MAX_MASS, NAN, GB_FIELD_ABOVE_MIN,
        ON (GB_FORM_TIN) | ON (GB_FORM_PIECE)),
  REAL (S (pack), GB_DIM_COUNT, N_ ("In a pack"), N_ ("Pieces in one pack; the price is for a pack."), 0, MAX_COUNT, 1,
        GB_FIELD_ABOVE_MIN, 0),
  MONEY (S (price), N_ ("Price"), N_ ("For one pack."), 0),
  TEXT (S (supplier), N_ ("Supplier"), N_ ("Who sells it.")),
  REAL (S (on_hand), GB_DIM_COUNT, N_ ("On hand"),
        N_ ("Pieces that were in the shed at the start, without a receipt in this build."), 0, MAX_COUNT, 0, 0, 0),
  CHOICE (S (origin), N_ ("Origin"), N_ ("Saved and found things cost nothing."), origin_choices, 0, 0),
  REF (S (category), N_ ("Budget head"), N_ ("The head of the budget that it falls under."), GB_RECORD_CATEGORY, 0),
  NOTE (S (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define H(m) GB_RECORD_HULL, GbHull, m
static const GbField hull_fields[] = {
  NAME (H (name), N_ ("Name"), N_ ("Which hull it is.")),
  CHOICE (H (form), N_ ("Form"), N_ ("How its shape is given."), hull_choices, 0, 0),
  FLAG (H (pair), N_ ("Pair"), N_ ("One to port and one to starboard.")),
  CHOICE (H (edge), N_ ("Edge"), N_ ("Whether water may come over its edge."), edge_choices, 0, 0),
  FLAG (H (inside), N_ ("Inside another hull"),
        N_ ("An air space or foam within another hull: it carries only when that is full of water.")),
  PLACE (H (x), N_ ("x"), N_ ("Origin of its axes, forward of the aft end of the baseline."), 0),
  PLACE (H (y), N_ ("y"), N_ ("Origin of its axes, to port of the centreline."), 0),
  PLACE (H (z), N_ ("z"), N_ ("Origin of its axes, above the baseline."), 0),
  SIZE (H (length), N_ ("Length"), N_ ("Along x."), ON (GB_HULL_BLOCK) | ON (GB_HULL_PIPE)),
  SIZE (H (width), N_ ("Width"), N_ ("Across, amidships."), ON (GB_HULL_BLOCK)),
  SIZE (H (height), N_ ("Height"), N_ ("From its bottom to its top."), ON (GB_HULL_BLOCK) | ON (GB_HULL_PRISM)),
  REAL (H (rake_fore), GB_DIM_LENGTH, N_ ("Rake forward"), N_ ("How much shorter the bottom is than the top, forward."), 0,
        MAX_LENGTH, 0, 0, ON (GB_HULL_BLOCK)),
  REAL (H (rake_aft), GB_DIM_LENGTH, N_ ("Rake aft"), N_ ("How much shorter the bottom is than the top, aft."), 0, MAX_LENGTH, 0,
        0, ON (GB_HULL_BLOCK)),
  REAL (H (width_fore), GB_DIM_LENGTH, N_ ("Width forward"), N_ ("At the forward end; empty: as amidships."), 0, MAX_LENGTH, NAN,
        0, ON (GB_HULL_BLOCK)),
  REAL (H (width_aft), GB_DIM_LENGTH, N_ ("Width aft"), N_ ("At the aft end; empty: as amidships."), 0, MAX_LENGTH, NAN, 0,
        ON (GB_HULL_BLOCK)),
  SIZE (H (diameter), N_ ("Diameter"), N_ ("Of the pipe, outside."), ON (GB_HULL_PIPE)),
  OUTLINE (H (outline), N_ ("Outline"), N_ ("Seen from above: points x y, one after the other round the edge."),
           ON (GB_HULL_PRISM)),
  NOTE (H (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define ST(m) GB_RECORD_STATION, GbStation, m
static const GbField station_fields[] = {
  REAL (ST (x), GB_DIM_LENGTH, N_ ("x"), N_ ("Where the section is cut, forward of the hull's origin."), -MAX_LENGTH, MAX_LENGTH,
        NAN, GB_FIELD_REQUIRED, 0),
};

#define O(m) GB_RECORD_OFFSET, GbOffset, m
static const GbField offset_fields[] = {
  REAL (O (y), GB_DIM_LENGTH, N_ ("y"), N_ ("Half breadth, from the hull's centreline."), 0, MAX_LENGTH, NAN, GB_FIELD_REQUIRED,
        0),
  REAL (O (z), GB_DIM_LENGTH, N_ ("z"), N_ ("Height above the hull's origin."), -MAX_LENGTH, MAX_LENGTH, NAN, GB_FIELD_REQUIRED,
        0),
};

#define OP(m) GB_RECORD_OPENING, GbOpening, m
static const GbField opening_fields[] = {
  NAME (OP (name), N_ ("Name"), N_ ("What must stay above water: a hatch, a daggerboard slot, a coaming.")),
  FLAG (OP (ring), N_ ("Goes round"), N_ ("The last corner is joined to the first.")),
  FLAG (OP (pair), N_ ("Both sides"), N_ ("The same on the other side of the hull's centreline.")),
};

#define CN(m) GB_RECORD_CORNER, GbCorner, m
static const GbField corner_fields[] = {
  PLACE (CN (x), N_ ("x"), N_ ("Forward of the hull's origin."), NAN),
  PLACE (CN (y), N_ ("y"), N_ ("To port of the hull's centreline."), 0),
  PLACE (CN (z), N_ ("z"), N_ ("Height above the hull's origin."), NAN),
};

#define P(m) GB_RECORD_PART, GbPart, m
#define SHEET ON (GB_TAKEOFF_SHEET)
#define LENGTH ON (GB_TAKEOFF_LENGTH)
#define BLOCK ON (GB_TAKEOFF_BLOCK)
#define SKIN ON (GB_TAKEOFF_SKIN)
#define COATING ON (GB_TAKEOFF_COATING)
#define COUNT ON (GB_TAKEOFF_COUNT)
#define LUMP ON (GB_TAKEOFF_LUMP)
static const GbField part_fields[] = {
  NAME (P (name), N_ ("Name"), N_ ("What the part is called.")),
  CHOICE (P (kind), N_ ("Kind"), N_ ("A part, or a group of parts."), kind_choices, 0, 0),
  FLAG (P (pair), N_ ("Pair"), N_ ("One to port and one to starboard: entered once, counted twice.")),
  REAL (P (quantity), GB_DIM_COUNT, N_ ("Quantity"), N_ ("How many of them, or of each of the pair."), 0, MAX_COUNT, 1, 0, 0),
  CHOICE (P (state), N_ ("State"), N_ ("How far it has come."), state_choices, 0, 0),
  CHOICE (P (takeoff), N_ ("Take-off"), N_ ("How its amount is found."), takeoff_choices, 0, 0),
  REF (P (stock), N_ ("Stock"), N_ ("What it is cut from; gives material, thickness or section."), GB_RECORD_STOCK,
       SHEET | LENGTH | BLOCK | SKIN | COATING | COUNT),
  REF (P (material), N_ ("Material"), N_ ("What it is made of."), GB_RECORD_MATERIAL, SHEET | LENGTH | BLOCK | SKIN | COATING),
  SIZE (P (length), N_ ("Length"), N_ ("Of one piece."), SHEET | LENGTH | BLOCK),
  SIZE (P (width), N_ ("Width"), N_ ("Of one piece."), SHEET | LENGTH | BLOCK),
  SIZE (P (thickness), N_ ("Thickness"), N_ ("Of one piece."), SHEET | LENGTH | BLOCK | SKIN),
  OUTLINE (P (outline), N_ ("Outline"), N_ ("Points x y round the edge; a semicolon starts a hole."), SHEET),
  REAL (P (area), GB_DIM_AREA, N_ ("Area"), N_ ("Where it is known rather than drawn."), 0, 10000, NAN, GB_FIELD_ABOVE_MIN,
        SHEET | COATING),
  CHOICE (P (section), N_ ("Section"), N_ ("Shape of the cross-section."), section_choices, 0, LENGTH),
  SIZE (P (diameter), N_ ("Diameter"), N_ ("Outside diameter."), LENGTH),
  SIZE (P (wall), N_ ("Wall"), N_ ("Thickness of the tube's wall."), LENGTH),
  REAL (P (linear_mass), GB_DIM_LINEAR, N_ ("Mass per length"), N_ ("Mass of one metre; empty: the material's."), 0, 1000, NAN,
        GB_FIELD_ABOVE_MIN, LENGTH),
  REAL (P (volume), GB_DIM_VOLUME, N_ ("Volume"), N_ ("Where it is known rather than measured by its sides."), 0, 10000, NAN,
        GB_FIELD_ABOVE_MIN, BLOCK),
  REF (P (hull), N_ ("Hull"), N_ ("The hull whose skin this is."), GB_RECORD_HULL, SKIN),
  CHOICE (P (extent), N_ ("Extent"), N_ ("Which part of the hull's surface."), extent_choices, 0, SKIN),
  REAL (P (height), GB_DIM_LENGTH, N_ ("Height"), N_ ("Above the baseline, where the surface is divided."), -MAX_LENGTH,
        MAX_LENGTH, NAN, 0, SKIN),
  REAL (P (areal_mass), GB_DIM_AREAL, N_ ("Mass per area"), N_ ("Of the skin, where no thickness is given."), 0, 1000, NAN,
        GB_FIELD_ABOVE_MIN, SKIN),
  CHOICE (P (coating), N_ ("Coating"), N_ ("Paint, or cloth wetted with resin."), coating_choices, 0, COATING),
  REF (P (surface_of), N_ ("Surfaces of"), N_ ("The part or group that is coated, where no area is given."), GB_RECORD_PART,
       COATING),
  REAL (P (coats), GB_DIM_COUNT, N_ ("Coats"), N_ ("Coats of paint, or layers of cloth."), 0, 1000, 1, GB_FIELD_ABOVE_MIN,
        COATING),
  REAL (P (coverage), GB_DIM_COVERAGE, N_ ("Coverage"), N_ ("Area that a litre covers in one coat, as the tin says."), 0, 1.0e9,
        NAN, GB_FIELD_ABOVE_MIN, COATING),
  REF (P (resin), N_ ("Resin"), N_ ("What wets the cloth."), GB_RECORD_MATERIAL, COATING),
  REAL (P (resin_ratio), GB_DIM_RATIO, N_ ("Resin to cloth"), N_ ("Mass of resin over mass of cloth; 1 is usual by hand."), 0, 20,
        1, 0, COATING),
  REAL (P (unit_mass), GB_DIM_MASS, N_ ("Mass of one"), N_ ("Of one piece; empty: the stock's."), 0, MAX_MASS, NAN,
        GB_FIELD_ABOVE_MIN, COUNT),
  REAL (P (mass), GB_DIM_MASS, N_ ("Mass"), N_ ("Of one, as it is known or guessed."), 0, MAX_MASS, NAN, GB_FIELD_ABOVE_MIN, LUMP),
  CHOICE (P (basis), N_ ("Basis"), N_ ("How the mass is known."), basis_choices, 0, 0),
  REAL (P (spread), GB_DIM_RATIO, N_ ("Spread"), N_ ("Standard deviation of the amount; empty: by its basis."), 0, 2, NAN, 0, 0),
  PLACE (P (x), N_ ("x"), N_ ("Centre, forward of the group's origin."), NAN),
  PLACE (P (y), N_ ("y"), N_ ("Centre, to port of the group's origin."), 0),
  PLACE (P (z), N_ ("z"), N_ ("Centre, above the group's origin."), NAN),
  REAL (P (place_spread), GB_DIM_LENGTH, N_ ("Spread of place"), N_ ("Standard deviation of its place; empty: the build's."), 0, 10,
        NAN, 0, 0),
  REAL (P (turn_x), GB_DIM_ANGLE, N_ ("Turn about x"), N_ ("Positive lifts the port side."), -2 * G_PI, 2 * G_PI, 0, 0, 0),
  REAL (P (turn_y), GB_DIM_ANGLE, N_ ("Turn about y"), N_ ("Positive lowers the forward end."), -2 * G_PI, 2 * G_PI, 0, 0, 0),
  REAL (P (turn_z), GB_DIM_ANGLE, N_ ("Turn about z"), N_ ("Positive swings the forward end to port."), -2 * G_PI, 2 * G_PI, 0, 0,
        0),
  MONEY (P (price), N_ ("Planned price"), N_ ("For each, where no stock gives a price."), 0),
  REF (P (category), N_ ("Budget head"), N_ ("The head of the budget that it falls under."), GB_RECORD_CATEGORY, 0),
  NOTE (P (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define W(m) GB_RECORD_WEIGHING, GbWeighing, m
static const GbField weighing_fields[] = {
  REF (W (part), N_ ("What"), N_ ("The part or group that was weighed; empty: the whole boat."), GB_RECORD_PART, 0),
  DATE (W (date), N_ ("Date"), N_ ("When it was weighed.")),
  CHOICE (W (on_scale), N_ ("On the scale"), N_ ("All of them together, or one."), on_scale_choices, 0, 0),
  REAL (W (tare), GB_DIM_MASS, N_ ("Tare"), N_ ("Mass of slings or trestles, to be taken off."), 0, MAX_MASS, 0, 0, 0),
  REAL (W (mass_sd), GB_DIM_MASS, N_ ("Scale's spread"), N_ ("Standard deviation of one reading."), 0, MAX_MASS, NAN, 0, 0),
  NOTE (W (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define R(m) GB_RECORD_READING, GbReading, m
static const GbField reading_fields[] = {
  REAL (R (mass), GB_DIM_MASS, N_ ("Scale says"), N_ ("The reading at this support."), 0, MAX_MASS, NAN, GB_FIELD_REQUIRED, 0),
  PLACE (R (x), N_ ("x"), N_ ("Where the support stands; empty on a single scale."), NAN),
  PLACE (R (y), N_ ("y"), N_ ("Where the support stands; empty on a single scale."), NAN),
};

#define CO(m) GB_RECORD_CONDITION, GbCondition, m
static const GbField condition_fields[] = {
  NAME (CO (name), N_ ("Name"), N_ ("Who and what is aboard: two up, with camping gear.")),
  REAL (CO (heeling_moment), GB_DIM_MOMENT, N_ ("Heeling moment"),
        N_ ("A steady one, to starboard, to lay over the righting lever: 20 kg of wind on a sail 2 m up is 40."), -MAX_MASS, MAX_MASS,
        NAN, 0, 0),
  REAL (CO (holding), GB_DIM_RATIO, N_ ("Hung on when swamped"),
        N_ ("Share of their weight that people in the water, holding on, put on her; empty: 2/15."), 0, 1, NAN, 0, 0),
  NOTE (CO (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define L(m) GB_RECORD_LOAD, GbLoad, m
static const GbField load_fields[] = {
  NAME (L (name), N_ ("Name"), N_ ("Who or what it is.")),
  CHOICE (L (kind), N_ ("Kind"), N_ ("A person, gear, a liquid, a pull or something else."), load_choices, 0, 0),
  REAL (L (quantity), GB_DIM_COUNT, N_ ("Quantity"), N_ ("How many of them."), 0, MAX_COUNT, 1, 0, 0),
  REAL (L (mass), GB_DIM_MASS, N_ ("Mass"), N_ ("Of one; of a pull, the mass that weighs as much."), 0, MAX_MASS, NAN,
        GB_FIELD_ABOVE_MIN, 0),
  REAL (L (spread), GB_DIM_RATIO, N_ ("Spread"), N_ ("Standard deviation of the mass, as a share."), 0, 2, NAN, 0, 0),
  CHOICE (L (posture), N_ ("Posture"), N_ ("What z is measured to."), posture_choices, 0, ON (GB_LOAD_PERSON)),
  REAL (L (above), GB_DIM_LENGTH, N_ ("Centre above that"),
        N_ ("Height of a person's centre over the seat or the sole; empty: 0.25 m sitting, 1 m standing."), 0, 3, NAN, 0,
        ON (GB_LOAD_PERSON)),
  PLACE (L (x), N_ ("x"), N_ ("Centre, forward of the aft end of the baseline."), NAN),
  PLACE (L (y), N_ ("y"), N_ ("Centre, to port."), 0),
  PLACE (L (z), N_ ("z"), N_ ("Centre, above the baseline; of somebody sitting or standing, the seat or the sole."), NAN),
  SIZE (L (tank_length), N_ ("Tank's length"), N_ ("Inside, along x. With all three, the liquid runs to the lower side."),
        ON (GB_LOAD_WATER)),
  SIZE (L (tank_width), N_ ("Tank's width"), N_ ("Inside, across."), ON (GB_LOAD_WATER)),
  SIZE (L (tank_height), N_ ("Tank's height"), N_ ("Inside. x, y and z are then the middle of the tank."), ON (GB_LOAD_WATER)),
  REAL (L (liquid_density), GB_DIM_DENSITY, N_ ("Liquid's density"), N_ ("Empty: that of the water she floats in."), 0, MAX_DENSITY,
        NAN, GB_FIELD_ABOVE_MIN, ON (GB_LOAD_WATER)),
  REAL (L (horsepower), GB_DIM_COUNT, N_ ("Horsepower"), N_ ("As the motor's plate says; 1 hp is 0.746 kW."), 0, 1000, NAN,
        GB_FIELD_ABOVE_MIN, ON (GB_LOAD_MOTOR)),
  REAL (L (dip), GB_DIM_ANGLE, N_ ("Pulls down by"), N_ ("Below the level: 90° is a push straight down, 0° a level pull."), -G_PI / 2,
        G_PI / 2, G_PI / 2, 0, ON (GB_LOAD_PULL)),
  REAL (L (bearing), GB_DIM_ANGLE, N_ ("Pulls towards"), N_ ("From ahead: 90° to port, −90° to starboard, 180° astern."), -G_PI, G_PI,
        0, 0, ON (GB_LOAD_PULL)),
  NOTE (L (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define IN(m) GB_RECORD_INCLINING, GbInclining, m
static const GbField inclining_fields[] = {
  DATE (IN (date), N_ ("Date"), N_ ("When she was inclined.")),
  REF (IN (condition), N_ ("Condition"), N_ ("Who and what was aboard."), GB_RECORD_CONDITION, 0),
  REAL (IN (mass), GB_DIM_MASS, N_ ("Displacement"), N_ ("As she floated; empty: that of the condition."), 0, MAX_MASS, NAN,
        GB_FIELD_ABOVE_MIN, 0),
  SIZE (IN (pendulum), N_ ("Plumb line"), N_ ("Its length, where deflections are read and not angles."), 0),
  NOTE (IN (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define SH(m) GB_RECORD_SHIFT, GbShift, m
static const GbField shift_fields[] = {
  REAL (SH (mass), GB_DIM_MASS, N_ ("Weight moved"), N_ ("Its mass."), 0, MAX_MASS, NAN, GB_FIELD_ABOVE_MIN, 0),
  PLACE (SH (distance), N_ ("To starboard"), N_ ("How far from where it was at the start; negative to port."), NAN),
  REAL (SH (angle), GB_DIM_ANGLE, N_ ("Heel"), N_ ("Read, against the start; positive to starboard."), -G_PI / 2, G_PI / 2, NAN, 0, 0),
  REAL (SH (deflection), GB_DIM_LENGTH, N_ ("Deflection"), N_ ("Of the plumb line, where no angle was read; positive to starboard."),
        -10, 10, NAN, 0, 0),
};

#define T(m) GB_RECORD_TUB, GbTub, m
static const GbField tub_fields[] = {
  NAME (T (name), N_ ("Name"), N_ ("Which test it is.")),
  DATE (T (date), N_ ("Date"), N_ ("When it was done.")),
  REF (T (condition), N_ ("Condition"), N_ ("What the model stands for."), GB_RECORD_CONDITION, 0),
  REAL (T (scale), GB_DIM_COUNT, N_ ("Scale 1 to"), N_ ("How much longer the boat is than the model."), 0, 1000, NAN, GB_FIELD_ABOVE_MIN,
        0),
  REAL (T (water_density), GB_DIM_DENSITY, N_ ("Water in the tub"), N_ ("Empty: fresh water at 15 °C."), 900, 1300, NAN, 0, 0),
  REAL (T (mass), GB_DIM_MASS, N_ ("Model's mass"), N_ ("Bare, on the kitchen scale."), 0, MAX_MASS, NAN, GB_FIELD_ABOVE_MIN, 0),
  PLACE (T (x), N_ ("Its centre x"), N_ ("Where the bare model balances, on the model."), NAN),
  PLACE (T (z), N_ ("Its centre z"), N_ ("Height of that above the baseline, on the model."), NAN),
  PLACE (T (fore_x), N_ ("Forward mark x"), N_ ("Where it was read, on the model; empty: the forward end of the hulls."), NAN),
  REAL (T (fore_draught), GB_DIM_LENGTH, N_ ("Draught forward"), N_ ("From the line of the keel to the water, on the model."), -MAX_LENGTH,
        MAX_LENGTH, NAN, 0, 0),
  PLACE (T (aft_x), N_ ("Aft mark x"), N_ ("Where it was read, on the model; empty: the aft end of the hulls."), NAN),
  REAL (T (aft_draught), GB_DIM_LENGTH, N_ ("Draught aft"), N_ ("From the line of the keel to the water, on the model."), -MAX_LENGTH,
        MAX_LENGTH, NAN, 0, 0),
  REAL (T (heel), GB_DIM_ANGLE, N_ ("Heel"), N_ ("Read; positive to starboard."), -G_PI, G_PI, NAN, 0, 0),
  NOTE (T (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define TL(m) GB_RECORD_TUB_LOAD, GbTubLoad, m
static const GbField tub_load_fields[] = {
  NAME (TL (name), N_ ("Name"), N_ ("What was put into the model.")),
  REAL (TL (mass), GB_DIM_MASS, N_ ("Mass"), N_ ("On the kitchen scale."), 0, MAX_MASS, NAN, GB_FIELD_ABOVE_MIN, 0),
  PLACE (TL (x), N_ ("x"), N_ ("Its centre, forward of the aft end of the baseline, on the model."), NAN),
  PLACE (TL (y), N_ ("y"), N_ ("Its centre, to port, on the model."), 0),
  PLACE (TL (z), N_ ("z"), N_ ("Its centre, above the baseline, on the model."), NAN),
};

#define PU(m) GB_RECORD_PURCHASE, GbPurchase, m
static const GbField purchase_fields[] = {
  DATE (PU (date), N_ ("Date"), N_ ("On the receipt.")),
  TEXT (PU (supplier), N_ ("Supplier"), N_ ("Who sold it.")),
  NOTE (PU (notes), N_ ("Notes"), N_ ("Anything worth remembering.")),
};

#define LI(m) GB_RECORD_LINE, GbLine, m
static const GbField line_fields[] = {
  CHOICE (LI (kind), N_ ("Kind"), N_ ("What was bought."), line_choices, 0, 0),
  TEXT (LI (what), N_ ("What"), N_ ("As the receipt says it.")),
  REF (LI (stock), N_ ("Stock"), N_ ("Which stock; the quantity counts packs."), GB_RECORD_STOCK, ON (GB_LINE_STOCK)),
  REF (LI (part), N_ ("Part"), N_ ("The part that it is for."), GB_RECORD_PART, ON (GB_LINE_PART)),
  REAL (LI (quantity), GB_DIM_COUNT, N_ ("Quantity"), N_ ("How many; negative for what was taken back."), -MAX_COUNT, MAX_COUNT, 1,
        0, 0),
  MONEY (LI (price), N_ ("Price"), N_ ("For each."), -MAX_MONEY),
  REAL (LI (discount), GB_DIM_RATIO, N_ ("Discount"), N_ ("Taken off this line."), 0, 1, 0, 0, 0),
  REF (LI (category), N_ ("Budget head"), N_ ("The head that it falls under; empty: the stock's or the part's."),
       GB_RECORD_CATEGORY, 0),
};

#define TYPE(K, T, n, l, p, o, f, s) [K] = { K, n, l, p, sizeof (T), o, f, G_N_ELEMENTS (f), s }
const GbRecordType gb_record_types[GB_N_RECORDS] = {
  TYPE (GB_RECORD_BUILD, GbBuild, "build", N_ ("Build"), N_ ("Builds"), GB_N_RECORDS, build_fields, "water"),
  TYPE (GB_RECORD_CATEGORY, GbCategory, "category", N_ ("Budget head"), N_ ("Budget heads"), GB_N_RECORDS, category_fields, NULL),
  TYPE (GB_RECORD_MATERIAL, GbMaterial, "material", N_ ("Material"), N_ ("Materials"), GB_N_RECORDS, material_fields, "measure"),
  TYPE (GB_RECORD_SAMPLE, GbSample, "sample", N_ ("Sample"), N_ ("Samples"), GB_RECORD_MATERIAL, sample_fields, NULL),
  TYPE (GB_RECORD_STOCK, GbStock, "stock", N_ ("Stock"), N_ ("Stock"), GB_N_RECORDS, stock_fields, "form"),
  TYPE (GB_RECORD_HULL, GbHull, "hull", N_ ("Hull"), N_ ("Hulls"), GB_N_RECORDS, hull_fields, "form"),
  TYPE (GB_RECORD_STATION, GbStation, "station", N_ ("Station"), N_ ("Stations"), GB_RECORD_HULL, station_fields, NULL),
  TYPE (GB_RECORD_OFFSET, GbOffset, "offset", N_ ("Offset"), N_ ("Offsets"), GB_RECORD_STATION, offset_fields, NULL),
  TYPE (GB_RECORD_OPENING, GbOpening, "opening", N_ ("Opening"), N_ ("Openings"), GB_RECORD_HULL, opening_fields, NULL),
  TYPE (GB_RECORD_CORNER, GbCorner, "corner", N_ ("Corner"), N_ ("Corners"), GB_RECORD_OPENING, corner_fields, NULL),
  TYPE (GB_RECORD_PART, GbPart, "part", N_ ("Part"), N_ ("Parts"), GB_RECORD_PART, part_fields, "takeoff"),
  TYPE (GB_RECORD_WEIGHING, GbWeighing, "weighing", N_ ("Weighing"), N_ ("Weighings"), GB_N_RECORDS, weighing_fields, NULL),
  TYPE (GB_RECORD_READING, GbReading, "reading", N_ ("Reading"), N_ ("Readings"), GB_RECORD_WEIGHING, reading_fields, NULL),
  TYPE (GB_RECORD_CONDITION, GbCondition, "condition", N_ ("Condition"), N_ ("Conditions"), GB_N_RECORDS, condition_fields, NULL),
  TYPE (GB_RECORD_LOAD, GbLoad, "load", N_ ("Load"), N_ ("Loads"), GB_RECORD_CONDITION, load_fields, "kind"),
  TYPE (GB_RECORD_INCLINING, GbInclining, "inclining", N_ ("Inclining test"), N_ ("Inclining tests"), GB_N_RECORDS, inclining_fields,
        NULL),
  TYPE (GB_RECORD_SHIFT, GbShift, "shift", N_ ("Reading of heel"), N_ ("Readings of heel"), GB_RECORD_INCLINING, shift_fields, NULL),
  TYPE (GB_RECORD_TUB, GbTub, "tub", N_ ("Test of the model"), N_ ("Tests of the model"), GB_N_RECORDS, tub_fields, NULL),
  TYPE (GB_RECORD_TUB_LOAD, GbTubLoad, "tub_load", N_ ("Load of the model"), N_ ("Loads of the model"), GB_RECORD_TUB, tub_load_fields,
        NULL),
  TYPE (GB_RECORD_PURCHASE, GbPurchase, "purchase", N_ ("Purchase"), N_ ("Purchases"), GB_N_RECORDS, purchase_fields, NULL),
  TYPE (GB_RECORD_LINE, GbLine, "line", N_ ("Line"), N_ ("Lines"), GB_RECORD_PURCHASE, line_fields, "kind"),
};
