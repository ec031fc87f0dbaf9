/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The records of a build as plain structs.
 *
 * Units are SI throughout: metre, kilogram, second, radian; ratios are plain fractions (0.12, not 12); money is in
 * whole minor units (cents) of the build's currency; dates are GDate Julian days.
 *
 * Axes, for everything that has a place: x forward from the aft end of the baseline, y to port, z up from the
 * baseline; heel positive to starboard, trim positive by the bow.
 *
 * Unknown is a value of its own, never zero: NAN for a number, GB_MONEY_UNKNOWN for money, 0 for a date, 0 for a
 * reference (ids start at 1), NULL for a text.
 *
 * Every struct starts with GbRecord, so a GbRecord pointer may be cast to the struct of its kind and back. What a
 * field means, its range and how it is entered stand in the field table (fields.h); adding a field is one line here, one
 * there and one in data/schema.sql. */

#define GB_MONEY_UNKNOWN G_MININT64

typedef enum
{
  GB_RECORD_BUILD, /* exactly one, id 1 */
  GB_RECORD_CATEGORY,
  GB_RECORD_MATERIAL,
  GB_RECORD_SAMPLE, /* in a material */
  GB_RECORD_STOCK,
  GB_RECORD_HULL,
  GB_RECORD_STATION, /* in a hull */
  GB_RECORD_OFFSET,  /* in a station */
  GB_RECORD_OPENING, /* in a hull */
  GB_RECORD_CORNER,  /* in an opening */
  GB_RECORD_PART,    /* in a group, which is a part too */
  GB_RECORD_WEIGHING,
  GB_RECORD_READING, /* in a weighing */
  GB_RECORD_CONDITION,
  GB_RECORD_LOAD, /* in a condition */
  GB_RECORD_INCLINING,
  GB_RECORD_SHIFT, /* in an inclining test */
  GB_RECORD_TUB,
  GB_RECORD_TUB_LOAD, /* in a test of a model */
  GB_RECORD_PURCHASE,
  GB_RECORD_LINE, /* in a purchase */
  GB_N_RECORDS
} GbRecordKind;

/* What every record has. 'owner' is the id of the record that it lives in (0: none); 'position' orders it among its
 * siblings; 'typed' keeps what was typed where that says more than the number (see typed.h). 'kind', 'index' and
 * 'children' are kept by GbBoat and are not stored. */
typedef struct
{
  gint64 id;
  gint64 owner;
  double position;
  char *typed;

  GbRecordKind kind;
  guint index;         /* dense: place in GbBoat's order of its kind; for parts, the place in the flattened tree */
  GPtrArray *children; /* (element-type GbRecord) (nullable), ordered, borrowed; of a hull its stations */
} GbRecord;

typedef enum
{
  GB_UNITS_METRIC,
  GB_UNITS_FEET, /* feet, inches and pounds */
} GbUnits;

typedef enum
{
  GB_WATER_FRESH,
  GB_WATER_SALT,
  GB_WATER_GIVEN,
} GbWater;

typedef struct
{
  GbRecord rec;
  char *name;
  char *notes;
  char *currency; /* ISO 4217 code */
  gint64 units;   /* GbUnits */
  double target_mass;
  gint64 water; /* GbWater */
  double salinity;
  double temperature; /* degrees Celsius */
  double water_density;
  double freeboard; /* least accepted */
  double margin_estimated, margin_calculated, margin_weighed;
  double margin_mass;
  double spread_estimated, spread_calculated; /* relative standard deviations where a part gives none */
  double place_spread;                        /* standard deviation of a place, where a part gives none */
  double cutting_allowance;
  gint64 cost_allowance;
} GbBuild;

typedef struct
{
  GbRecord rec;
  char *name;
  gint64 budget;
} GbCategory;

typedef enum
{
  GB_FAMILY_WOOD,
  GB_FAMILY_PLYWOOD,
  GB_FAMILY_FOAM,
  GB_FAMILY_METAL,
  GB_FAMILY_PLASTIC,
  GB_FAMILY_RESIN,
  GB_FAMILY_FIBRE,
  GB_FAMILY_FILLER,
  GB_FAMILY_GLUE,
  GB_FAMILY_PAINT,
  GB_FAMILY_ROPE,
  GB_FAMILY_SAILCLOTH,
  GB_FAMILY_RUBBER,
  GB_FAMILY_OTHER,
} GbFamily;

typedef enum
{
  GB_MEASURE_DENSITY,
  GB_MEASURE_WOOD, /* basic specific gravity and moisture content give the density */
  GB_MEASURE_AREAL,
  GB_MEASURE_LINEAR,
} GbMeasure;

typedef struct
{
  GbRecord rec;
  char *name;
  gint64 family;  /* GbFamily */
  gint64 measure; /* GbMeasure */
  double density;
  double basic_gravity; /* oven-dry mass over green volume, water = 1 */
  double moisture;      /* mass of water over oven-dry mass */
  double areal_mass;
  double linear_mass;
  double spread; /* relative standard deviation */
  char *source;
  char *notes;
} GbMaterial;

/* A piece of a material put on a scale: its sides say how much there is of it. */
typedef struct
{
  GbRecord rec;
  gint64 date;
  double mass;
  double mass_sd;
  double length, width, thickness;
  double pieces;
  char *notes;
} GbSample;

typedef enum
{
  GB_FORM_SHEET,
  GB_FORM_LENGTH,
  GB_FORM_BLOCK,
  GB_FORM_TIN,
  GB_FORM_PIECE,
} GbForm;

typedef enum
{
  GB_SECTION_RECTANGLE,
  GB_SECTION_ROUND,
  GB_SECTION_TUBE,
  GB_SECTION_LINEAR, /* a mass per metre, whatever the section */
} GbSection;

typedef enum
{
  GB_ORIGIN_SHOP,
  GB_ORIGIN_SAVED, /* from an older boat: costs nothing */
  GB_ORIGIN_FOUND,
} GbOrigin;

typedef struct
{
  GbRecord rec;
  char *name;
  gint64 form;     /* GbForm */
  gint64 material; /* id */
  double length, width, thickness;
  gint64 section; /* GbSection */
  double diameter, wall;
  double linear_mass;
  double volume; /* of what is in one tin */
  double mass;   /* of one piece, or of what is in one tin */
  double pack;   /* pieces in a pack; the price is for a pack */
  gint64 price;
  char *supplier;
  double on_hand; /* pieces; may be a fraction of a tin */
  gint64 origin;  /* GbOrigin */
  gint64 category;
  char *notes;
} GbStock;

typedef enum
{
  GB_KIND_PART,
  GB_KIND_GROUP,
} GbPartKind;

typedef enum
{
  GB_STATE_PLANNED,
  GB_STATE_BOUGHT,
  GB_STATE_MADE,
  GB_STATE_FITTED,
} GbState;

typedef enum
{
  GB_TAKEOFF_SHEET,
  GB_TAKEOFF_LENGTH,
  GB_TAKEOFF_BLOCK,
  GB_TAKEOFF_SKIN,
  GB_TAKEOFF_COATING,
  GB_TAKEOFF_COUNT,
  GB_TAKEOFF_LUMP,
} GbTakeoff;

typedef enum
{
  GB_BASIS_BY_TAKEOFF, /* estimated for a lump, calculated for the rest */
  GB_BASIS_ESTIMATED,
  GB_BASIS_CALCULATED,
  GB_BASIS_WEIGHED,
} GbBasis;

typedef enum
{
  GB_EXTENT_ALL,
  GB_EXTENT_BELOW,
  GB_EXTENT_ABOVE,
} GbExtent;

typedef enum
{
  GB_COATING_PAINT, /* area x coats / coverage gives a volume, times the material's density */
  GB_COATING_CLOTH, /* area x layers x areal mass of the cloth, and resin by its ratio to that */
} GbCoating;

/* A part or a group. A group's place is the origin of its own axes, and its turns turn them; a part's place is its
 * centre of gravity. Turns are applied about x, then y, then z, each about the axes of the group it is in. */
typedef struct
{
  GbRecord rec;
  char *name;
  gint64 kind; /* GbPartKind */
  gint64 pair; /* 0 or 1 */
  double quantity;
  gint64 state;    /* GbState */
  gint64 takeoff;  /* GbTakeoff */
  gint64 stock;    /* id */
  gint64 material; /* id */
  double length, width, thickness;
  char *outline;  /* see outline.h */
  double area;    /* given */
  gint64 section; /* GbSection */
  double diameter, wall;
  double linear_mass;
  double volume;     /* given */
  gint64 hull;       /* id, whose skin this is */
  gint64 extent;     /* GbExtent: which part of the skin */
  double height;     /* z that divides the skin, in the boat's axes */
  double areal_mass; /* of the skin, where no thickness is given */
  gint64 coating;    /* GbCoating */
  gint64 surface_of; /* id of the part or group that is coated */
  double coats;      /* coats, or layers of cloth */
  double coverage;   /* area per volume of paint, 1/m */
  gint64 resin;      /* id of the material that wets the cloth */
  double resin_ratio; /* mass of resin over mass of cloth */
  double unit_mass;   /* of one piece */
  double mass;        /* of a lump */
  gint64 basis;       /* GbBasis */
  double spread;      /* relative standard deviation of the amount */
  double x, y, z;
  double place_spread;
  double turn_x, turn_y, turn_z;
  gint64 price; /* planned, for each, where no stock gives one */
  gint64 category;
  char *notes;

  /* Kept by GbBoat, not stored. */
  guint depth;
  guint n_below; /* size of the subtree below this, in the flattened tree */
} GbPart;

typedef enum
{
  GB_ON_SCALE_ALL, /* quantity and pair together */
  GB_ON_SCALE_ONE,
} GbOnScale;

/* Something put on one scale or on two or three supports; the readings say which. Places are in the axes that the
 * weighed thing lives in: a group's own, the boat's, or for a part those of the group it is in. */
typedef struct
{
  GbRecord rec;
  gint64 part; /* id; 0: the whole boat */
  gint64 date;
  gint64 on_scale; /* GbOnScale */
  double tare;     /* mass of sling or trestle, to be taken off the sum */
  double mass_sd;  /* of one reading */
  char *notes;
} GbWeighing;

typedef struct
{
  GbRecord rec;
  double mass;
  double x, y;
} GbReading;

typedef enum
{
  GB_HULL_STATIONS,
  GB_HULL_BLOCK,
  GB_HULL_PIPE,
  GB_HULL_PRISM,
} GbHullForm;

typedef enum
{
  GB_EDGE_OPEN,   /* the sheer must stay above water */
  GB_EDGE_CLOSED, /* decked all over: may be pressed under */
} GbEdge;

/* A watertight body. Its place is the origin of its own axes in the boat's. */
typedef struct
{
  GbRecord rec;
  char *name;
  gint64 form; /* GbHullForm */
  gint64 pair;
  gint64 edge;   /* GbEdge */
  gint64 inside; /* 0 or 1: in another hull, so it carries only when that is full of water */
  double x, y, z;
  double length, width, height;
  double rake_fore, rake_aft;   /* how much shorter the bottom is than the top, at each end */
  double width_fore, width_aft; /* at the ends; unknown: as amidships */
  double diameter;
  char *outline; /* of a prism, in plan (x, y), drawn up by 'height' */
  char *notes;

  /* Kept by GbBoat, not stored. */
  GPtrArray *openings; /* as the record's children, which are its stations */
} GbHull;

typedef struct
{
  GbRecord rec;
  double x;
} GbStation;

/* A point of a half section, entered from the keel to the sheer. */
typedef struct
{
  GbRecord rec;
  double y, z;
} GbOffset;

/* An edge beside the hull's own that must stay dry: a hatch, a daggerboard slot, a coaming. Its corners are joined by straight
 * lines, in their order; one corner is a point. */
typedef struct
{
  GbRecord rec;
  char *name;
  gint64 ring; /* 0 or 1: the last corner is joined to the first */
  gint64 pair; /* 0 or 1: mirrored across the hull's own centreline as well */
} GbOpening;

/* In the hull's axes. */
typedef struct
{
  GbRecord rec;
  double x, y, z;
} GbCorner;

typedef struct
{
  GbRecord rec;
  char *name;
  double heeling_moment; /* steady, to starboard; kg m: a mass that weighs on an arm */
  double holding;        /* swamped: share of their weight that people in the water hang on her; unknown: 2/15 */
  char *notes;
} GbCondition;

typedef enum
{
  GB_LOAD_PERSON,
  GB_LOAD_GEAR,
  GB_LOAD_WATER, /* or another liquid */
  GB_LOAD_BALLAST,
  GB_LOAD_MOTOR,
  GB_LOAD_CARGO,
  GB_LOAD_PULL, /* a rope, or a push down: a force said as the mass that weighs as much */
  GB_LOAD_OTHER,
} GbLoadKind;

typedef enum
{
  GB_POSTURE_CENTRE,   /* z is the person's own centre */
  GB_POSTURE_SITTING,  /* z is the seat */
  GB_POSTURE_STANDING, /* z is what the feet stand on */
} GbPosture;

typedef struct
{
  GbRecord rec;
  char *name;
  gint64 kind; /* GbLoadKind */
  double quantity;
  double mass; /* each */
  double spread;
  gint64 posture; /* GbPosture, of a person */
  double above;   /* a person's centre over the seat or the sole; unknown: by posture */
  double x, y, z; /* its centre; of a person see posture; of a liquid in a tank the middle of the tank */
  double tank_length, tank_width, tank_height; /* along x, y, z; all three known: the liquid runs to the lower side */
  double liquid_density;                       /* unknown: the water that she floats in */
  double horsepower;                           /* of a motor */
  double dip;     /* of a pull, below the level; a quarter turn is a push straight down */
  double bearing; /* of a pull, from ahead, positive to port */
  char *notes;
} GbLoad;

/* An inclining test: weights are moved across, and the heel is read. */
typedef struct
{
  GbRecord rec;
  gint64 date;
  gint64 condition; /* id: who and what was aboard */
  double mass;      /* displacement at the test; unknown: that of the condition */
  double pendulum;  /* length of the plumb line, where deflections are read */
  char *notes;
} GbInclining;

/* One reading, against the start: the weight that was moved, how far to starboard, and what was read, positive to starboard. */
typedef struct
{
  GbRecord rec;
  double mass;
  double distance;
  double angle;
  double deflection; /* at the end of the plumb line; where no angle is given */
} GbShift;

/* A test of a scale model, in its own size: lengths, masses and places are those of the model. */
typedef struct
{
  GbRecord rec;
  char *name;
  gint64 date;
  gint64 condition;      /* id: what it stands for */
  double scale;          /* boat's length over model's */
  double water_density;  /* unknown: fresh water at 15 degrees */
  double mass;           /* of the bare model */
  double x, z;           /* its centre */
  double fore_x, fore_draught; /* draughts read, from the keel line; where: unknown: at the ends of the hulls */
  double aft_x, aft_draught;
  double heel;
  char *notes;
} GbTub;

typedef struct
{
  GbRecord rec;
  char *name;
  double mass;
  double x, y, z;
} GbTubLoad;

typedef struct
{
  GbRecord rec;
  gint64 date;
  char *supplier;
  char *notes;
} GbPurchase;

typedef enum
{
  GB_LINE_STOCK,
  GB_LINE_PART,
  GB_LINE_TOOLS,
  GB_LINE_DELIVERY,
  GB_LINE_OTHER,
} GbLineKind;

/* A line of a receipt. A return is a line with a negative quantity. */
typedef struct
{
  GbRecord rec;
  gint64 kind; /* GbLineKind */
  char *what;
  gint64 stock;
  gint64 part;
  double quantity;
  gint64 price;    /* each */
  double discount; /* fraction off */
  gint64 category;
} GbLine;

G_END_DECLS
