-- One build of a boat: schema version 1 (PRAGMA user_version). Compiled into the program; each file keeps it, remarks and all.
--
-- A table for each kind of record, with the columns of the field table (src/boat/fields-table.c) in its order, after
--   id        never used again, also when the record is gone
--   owner     the record that this one lives in; it goes when that goes
--   position  orders the records that live in the same owner
--   typed     what was typed, where that says more than the number: lines "field=text"
-- NULL is unknown, never zero. Numbers are SI (metre, kilogram, radian); ratios plain fractions; money whole minor units of the
-- currency; days are counted from 1 = 1 January of the year 1, so that date('0001-01-01', (day - 1) || ' days') shows one.
-- A reference to a record that goes becomes NULL. The CHECKs are the outer fence; the program's own checks say more.

-- The build itself: one row.
CREATE TABLE build (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  notes TEXT CHECK (length(notes) <= 100000),
  currency TEXT CHECK (length(currency) <= 1000),
  units TEXT NOT NULL CHECK (units IN ('metric', 'feet')),
  target_mass REAL CHECK (target_mass > 0 AND target_mass <= 1000000), -- kg
  water TEXT NOT NULL CHECK (water IN ('fresh', 'salt', 'given')),
  salinity REAL CHECK (salinity BETWEEN 0 AND 42), -- g/kg
  temperature REAL CHECK (temperature BETWEEN -2 AND 40), -- degrees Celsius
  water_density REAL CHECK (water_density BETWEEN 900 AND 1300), -- kg/m3
  freeboard REAL CHECK (freeboard BETWEEN 0 AND 10), -- m
  margin_estimated REAL CHECK (margin_estimated BETWEEN 0 AND 2),
  margin_calculated REAL CHECK (margin_calculated BETWEEN 0 AND 2),
  margin_weighed REAL CHECK (margin_weighed BETWEEN 0 AND 2),
  margin_mass REAL CHECK (margin_mass BETWEEN 0 AND 1000000), -- kg
  spread_estimated REAL CHECK (spread_estimated BETWEEN 0 AND 2),
  spread_calculated REAL CHECK (spread_calculated BETWEEN 0 AND 2),
  place_spread REAL CHECK (place_spread BETWEEN 0 AND 10), -- m
  cutting_allowance REAL CHECK (cutting_allowance BETWEEN 0 AND 5),
  cost_allowance INTEGER CHECK (cost_allowance BETWEEN 0 AND 1000000000000) -- minor units
) STRICT;

-- The heads of the budget.
CREATE TABLE category (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  budget INTEGER CHECK (budget BETWEEN 0 AND 1000000000000) -- minor units
) STRICT;

-- Materials, and pieces of them that were put on a scale.
CREATE TABLE material (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  family TEXT NOT NULL CHECK (family IN ('wood', 'plywood', 'foam', 'metal', 'plastic', 'resin', 'fibre',
                                         'filler', 'glue', 'paint', 'rope', 'sailcloth', 'rubber', 'other')),
  measure TEXT NOT NULL CHECK (measure IN ('density', 'wood', 'areal', 'linear')),
  density REAL CHECK (density > 0 AND density <= 25000), -- kg/m3
  basic_gravity REAL CHECK (basic_gravity > 0 AND basic_gravity <= 1.5),
  moisture REAL CHECK (moisture BETWEEN 0 AND 3),
  areal_mass REAL CHECK (areal_mass > 0 AND areal_mass <= 1000), -- kg/m2
  linear_mass REAL CHECK (linear_mass > 0 AND linear_mass <= 1000), -- kg/m
  spread REAL CHECK (spread BETWEEN 0 AND 1),
  source TEXT CHECK (length(source) <= 1000),
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;

CREATE TABLE sample (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  owner INTEGER NOT NULL REFERENCES material ON DELETE CASCADE,
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  date INTEGER CHECK (date BETWEEN 693596 AND 803169), -- day
  mass REAL CHECK (mass > 0 AND mass <= 1000000), -- kg
  mass_sd REAL CHECK (mass_sd BETWEEN 0 AND 1000000), -- kg
  length REAL CHECK (length > 0 AND length <= 100), -- m
  width REAL CHECK (width > 0 AND width <= 100), -- m
  thickness REAL CHECK (thickness > 0 AND thickness <= 100), -- m
  pieces REAL CHECK (pieces > 0 AND pieces <= 1000000),
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;
CREATE INDEX sample_owner ON sample (owner);

-- What the shop sells and the shed holds.
CREATE TABLE stock (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  form TEXT NOT NULL CHECK (form IN ('sheet', 'length', 'block', 'tin', 'piece')),
  material INTEGER REFERENCES material ON DELETE SET NULL,
  length REAL CHECK (length > 0 AND length <= 100), -- m
  width REAL CHECK (width > 0 AND width <= 100), -- m
  thickness REAL CHECK (thickness > 0 AND thickness <= 100), -- m
  section TEXT NOT NULL CHECK (section IN ('rectangle', 'round', 'tube', 'linear')),
  diameter REAL CHECK (diameter > 0 AND diameter <= 100), -- m
  wall REAL CHECK (wall > 0 AND wall <= 100), -- m
  linear_mass REAL CHECK (linear_mass > 0 AND linear_mass <= 1000), -- kg/m
  volume REAL CHECK (volume > 0 AND volume <= 1000), -- m3
  mass REAL CHECK (mass > 0 AND mass <= 1000000), -- kg
  pack REAL CHECK (pack > 0 AND pack <= 1000000),
  price INTEGER CHECK (price BETWEEN 0 AND 1000000000000), -- minor units
  supplier TEXT CHECK (length(supplier) <= 1000),
  on_hand REAL CHECK (on_hand BETWEEN 0 AND 1000000),
  origin TEXT NOT NULL CHECK (origin IN ('shop', 'saved', 'found')),
  category INTEGER REFERENCES category ON DELETE SET NULL,
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;
CREATE INDEX stock_material ON stock (material) WHERE material IS NOT NULL;
CREATE INDEX stock_category ON stock (category) WHERE category IS NOT NULL;

-- Watertight bodies; their sections, and the points of those from keel to sheer.
CREATE TABLE hull (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  form TEXT NOT NULL CHECK (form IN ('stations', 'block', 'pipe', 'prism')),
  pair INTEGER NOT NULL CHECK (pair IN (0, 1)),
  edge TEXT NOT NULL CHECK (edge IN ('open', 'closed')),
  x REAL CHECK (x BETWEEN -100 AND 100), -- m
  y REAL CHECK (y BETWEEN -100 AND 100), -- m
  z REAL CHECK (z BETWEEN -100 AND 100), -- m
  length REAL CHECK (length > 0 AND length <= 100), -- m
  width REAL CHECK (width > 0 AND width <= 100), -- m
  height REAL CHECK (height > 0 AND height <= 100), -- m
  rake_fore REAL CHECK (rake_fore BETWEEN 0 AND 100), -- m
  rake_aft REAL CHECK (rake_aft BETWEEN 0 AND 100), -- m
  width_fore REAL CHECK (width_fore BETWEEN 0 AND 100), -- m
  width_aft REAL CHECK (width_aft BETWEEN 0 AND 100), -- m
  diameter REAL CHECK (diameter > 0 AND diameter <= 100), -- m
  outline TEXT CHECK (length(outline) <= 1000000),
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;

CREATE TABLE station (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  owner INTEGER NOT NULL REFERENCES hull ON DELETE CASCADE,
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  x REAL CHECK (x BETWEEN -100 AND 100) -- m
) STRICT;
CREATE INDEX station_owner ON station (owner);

CREATE TABLE offset (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  owner INTEGER NOT NULL REFERENCES station ON DELETE CASCADE,
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  y REAL CHECK (y BETWEEN 0 AND 100), -- m
  z REAL CHECK (z BETWEEN -100 AND 100) -- m
) STRICT;
CREATE INDEX offset_owner ON offset (owner);

-- Parts and groups: a part without an owner stands at the top. A part's place is its centre, a group's its origin.
CREATE TABLE part (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  owner INTEGER REFERENCES part ON DELETE CASCADE,
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  kind TEXT NOT NULL CHECK (kind IN ('part', 'group')),
  pair INTEGER NOT NULL CHECK (pair IN (0, 1)),
  quantity REAL CHECK (quantity BETWEEN 0 AND 1000000),
  state TEXT NOT NULL CHECK (state IN ('planned', 'bought', 'made', 'fitted')),
  takeoff TEXT NOT NULL CHECK (takeoff IN ('sheet', 'length', 'block', 'skin', 'coating', 'count', 'lump')),
  stock INTEGER REFERENCES stock ON DELETE SET NULL,
  material INTEGER REFERENCES material ON DELETE SET NULL,
  length REAL CHECK (length > 0 AND length <= 100), -- m
  width REAL CHECK (width > 0 AND width <= 100), -- m
  thickness REAL CHECK (thickness > 0 AND thickness <= 100), -- m
  outline TEXT CHECK (length(outline) <= 1000000),
  area REAL CHECK (area > 0 AND area <= 10000), -- m2
  section TEXT NOT NULL CHECK (section IN ('rectangle', 'round', 'tube', 'linear')),
  diameter REAL CHECK (diameter > 0 AND diameter <= 100), -- m
  wall REAL CHECK (wall > 0 AND wall <= 100), -- m
  linear_mass REAL CHECK (linear_mass > 0 AND linear_mass <= 1000), -- kg/m
  volume REAL CHECK (volume > 0 AND volume <= 10000), -- m3
  hull INTEGER REFERENCES hull ON DELETE SET NULL,
  extent TEXT NOT NULL CHECK (extent IN ('all', 'below', 'above')),
  height REAL CHECK (height BETWEEN -100 AND 100), -- m
  areal_mass REAL CHECK (areal_mass > 0 AND areal_mass <= 1000), -- kg/m2
  coating TEXT NOT NULL CHECK (coating IN ('paint', 'cloth')),
  surface_of INTEGER REFERENCES part ON DELETE SET NULL,
  coats REAL CHECK (coats > 0 AND coats <= 1000),
  coverage REAL CHECK (coverage > 0 AND coverage <= 1000000000), -- m2 per m3
  resin INTEGER REFERENCES material ON DELETE SET NULL,
  resin_ratio REAL CHECK (resin_ratio BETWEEN 0 AND 20),
  unit_mass REAL CHECK (unit_mass > 0 AND unit_mass <= 1000000), -- kg
  mass REAL CHECK (mass > 0 AND mass <= 1000000), -- kg
  basis TEXT NOT NULL CHECK (basis IN ('by-takeoff', 'estimated', 'calculated', 'weighed')),
  spread REAL CHECK (spread BETWEEN 0 AND 2),
  x REAL CHECK (x BETWEEN -100 AND 100), -- m
  y REAL CHECK (y BETWEEN -100 AND 100), -- m
  z REAL CHECK (z BETWEEN -100 AND 100), -- m
  place_spread REAL CHECK (place_spread BETWEEN 0 AND 10), -- m
  turn_x REAL CHECK (turn_x BETWEEN -6.2832 AND 6.2832), -- rad
  turn_y REAL CHECK (turn_y BETWEEN -6.2832 AND 6.2832), -- rad
  turn_z REAL CHECK (turn_z BETWEEN -6.2832 AND 6.2832), -- rad
  price INTEGER CHECK (price BETWEEN 0 AND 1000000000000), -- minor units
  category INTEGER REFERENCES category ON DELETE SET NULL,
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;
CREATE INDEX part_owner ON part (owner) WHERE owner IS NOT NULL;
CREATE INDEX part_stock ON part (stock) WHERE stock IS NOT NULL;
CREATE INDEX part_material ON part (material) WHERE material IS NOT NULL;
CREATE INDEX part_hull ON part (hull) WHERE hull IS NOT NULL;
CREATE INDEX part_surface_of ON part (surface_of) WHERE surface_of IS NOT NULL;
CREATE INDEX part_resin ON part (resin) WHERE resin IS NOT NULL;
CREATE INDEX part_category ON part (category) WHERE category IS NOT NULL;

-- Weighings, and what each scale said.
CREATE TABLE weighing (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  part INTEGER REFERENCES part ON DELETE SET NULL,
  date INTEGER CHECK (date BETWEEN 693596 AND 803169), -- day
  on_scale TEXT NOT NULL CHECK (on_scale IN ('all', 'one')),
  tare REAL CHECK (tare BETWEEN 0 AND 1000000), -- kg
  mass_sd REAL CHECK (mass_sd BETWEEN 0 AND 1000000), -- kg
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;
CREATE INDEX weighing_part ON weighing (part) WHERE part IS NOT NULL;

CREATE TABLE reading (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  owner INTEGER NOT NULL REFERENCES weighing ON DELETE CASCADE,
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  mass REAL CHECK (mass BETWEEN 0 AND 1000000), -- kg
  x REAL CHECK (x BETWEEN -100 AND 100), -- m
  y REAL CHECK (y BETWEEN -100 AND 100) -- m
) STRICT;
CREATE INDEX reading_owner ON reading (owner);

-- Named sets of loads, and the loads.
CREATE TABLE condition (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;

CREATE TABLE load (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  owner INTEGER NOT NULL REFERENCES condition ON DELETE CASCADE,
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  name TEXT CHECK (length(name) <= 1000),
  kind TEXT NOT NULL CHECK (kind IN ('person', 'gear', 'water', 'other')),
  quantity REAL CHECK (quantity BETWEEN 0 AND 1000000),
  mass REAL CHECK (mass > 0 AND mass <= 1000000), -- kg
  spread REAL CHECK (spread BETWEEN 0 AND 2),
  x REAL CHECK (x BETWEEN -100 AND 100), -- m
  y REAL CHECK (y BETWEEN -100 AND 100), -- m
  z REAL CHECK (z BETWEEN -100 AND 100), -- m
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;
CREATE INDEX load_owner ON load (owner);

-- Receipts, and their lines.
CREATE TABLE purchase (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  date INTEGER CHECK (date BETWEEN 693596 AND 803169), -- day
  supplier TEXT CHECK (length(supplier) <= 1000),
  notes TEXT CHECK (length(notes) <= 100000)
) STRICT;

CREATE TABLE line (
  id INTEGER PRIMARY KEY AUTOINCREMENT CHECK (id BETWEEN 1 AND 1000000000000),
  owner INTEGER NOT NULL REFERENCES purchase ON DELETE CASCADE,
  position REAL NOT NULL CHECK (abs(position) <= 1e15),
  typed TEXT CHECK (length(typed) <= 100000),
  kind TEXT NOT NULL CHECK (kind IN ('stock', 'part', 'tools', 'delivery', 'other')),
  what TEXT CHECK (length(what) <= 1000),
  stock INTEGER REFERENCES stock ON DELETE SET NULL,
  part INTEGER REFERENCES part ON DELETE SET NULL,
  quantity REAL CHECK (quantity BETWEEN -1000000 AND 1000000),
  price INTEGER CHECK (price BETWEEN -1000000000000 AND 1000000000000), -- minor units
  discount REAL CHECK (discount BETWEEN 0 AND 1),
  category INTEGER REFERENCES category ON DELETE SET NULL
) STRICT;
CREATE INDEX line_owner ON line (owner);
CREATE INDEX line_stock ON line (stock) WHERE stock IS NOT NULL;
CREATE INDEX line_part ON line (part) WHERE part IS NOT NULL;
CREATE INDEX line_category ON line (category) WHERE category IS NOT NULL;

-- What has been done, so that it can be undone, also after a restart: for each edit the rows that it changed (a changeset of SQLite's
-- session extension), the words that Undo shows, and where in the build it was. The oldest are let go.
CREATE TABLE history (
  id INTEGER PRIMARY KEY CHECK (id > 0),
  at INTEGER NOT NULL, -- seconds since 1970, UTC
  words TEXT NOT NULL CHECK (length(words) <= 10000),
  place_kind TEXT, -- a table's name
  place_id INTEGER,
  place_field TEXT, -- a column's name
  changeset BLOB NOT NULL
) STRICT;

-- How far the edits are done: those with an id up to this are, those above have been undone and can be redone.
CREATE TABLE history_mark (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  done INTEGER NOT NULL CHECK (done >= 0)
) STRICT;
INSERT INTO history_mark VALUES (1, 0);
