/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "small-build.h"

#include "store/text-form.h"

static const char text[]
    = "{ \"garboard\": 1,"
      "  \"build\": { \"name\": \"Wren\", \"currency\": \"EUR\", \"water\": \"given\", \"water_density\": 1000, \"freeboard\": 0.15,"
      "    \"cost_allowance\": \"20.00\" },"
      "  \"category\": [ { \"id\": 1, \"name\": \"Timber\", \"budget\": \"200.00\" }, { \"id\": 2, \"name\": \"Rig\" } ],"
      "  \"material\": [ { \"id\": 1, \"name\": \"ply\", \"family\": \"plywood\", \"density\": 500, \"source\": \"weighed\" },"
      "    { \"id\": 2, \"name\": \"not in use\", \"density\": 700 } ],"
      "  \"stock\": [ { \"id\": 1, \"name\": \"6 mm sheet\", \"form\": \"sheet\", \"material\": 1, \"length\": 2.5, \"width\": 1.25,"
      "    \"thickness\": 0.006, \"price\": \"52.80\", \"supplier\": \"Yard\", \"category\": 1 },"
      "    { \"id\": 2, \"name\": \"paint\", \"form\": \"tin\", \"volume\": 0.001 } ],"
      "  \"hull\": [ { \"id\": 1, \"name\": \"Wren\", \"form\": \"block\", \"length\": 2, \"width\": 0.8, \"height\": 0.3 } ],"
      "  \"part\": ["
      "    { \"id\": 1, \"name\": \"Hull\", \"kind\": \"group\", \"x\": 0, \"z\": 0, \"part\": ["
      "      { \"id\": 2, \"name\": \"Bottom\", \"takeoff\": \"sheet\", \"stock\": 1, \"length\": 2, \"width\": 0.8, \"x\": 1, \"z\": 0.05,"
      "        \"state\": \"made\" },"
      "      { \"id\": 3, \"name\": \"Side panel\", \"pair\": true, \"takeoff\": \"sheet\", \"stock\": 1, \"area\": 0.5, \"x\": 1.1,"
      "        \"y\": 0.4, \"z\": 0.25 } ] },"
      "    { \"id\": 4, \"name\": \"Rig\", \"kind\": \"group\", \"part\": ["
      "      { \"id\": 5, \"name\": \"Mast\", \"takeoff\": \"lump\", \"mass\": 3, \"x\": 1.5, \"z\": 2, \"price\": \"55.00\", \"category\": 2 },"
      "      { \"id\": 6, \"name\": \"Tiller\", \"takeoff\": \"length\", \"length\": 0.9, \"width\": 0.03, \"thickness\": 0.02 } ] },"
      "    { \"id\": 7, \"name\": \"Frames\", \"kind\": \"group\", \"quantity\": 2, \"x\": 0.5, \"z\": 0.1, \"part\": ["
      "      { \"id\": 8, \"name\": \"Knee\", \"takeoff\": \"count\", \"quantity\": 2, \"unit_mass\": 0.1, \"x\": 0.2, \"z\": 0,"
      "        \"price\": \"1.50\" } ] } ],"
      "  \"weighing\": [ { \"part\": 3, \"date\": \"2026-03-10\", \"reading\": [ { \"mass\": 3.2 } ] } ],"
      "  \"condition\": [ { \"name\": \"alone\", \"load\": [ { \"name\": \"me\", \"mass\": 75, \"x\": 1, \"z\": 0.4 } ] } ],"
      "  \"purchase\": [ { \"date\": \"2026-03-01\", \"supplier\": \"Yard\", \"line\": ["
      "      { \"kind\": \"stock\", \"stock\": 1, \"quantity\": 2, \"price\": \"52.80\", \"discount\": 0.05 },"
      "      { \"kind\": \"other\", \"what\": \"=clamps, wrong size\", \"quantity\": -1, \"price\": \"10.00\" } ] },"
      "    { \"date\": \"2026-02-20\", \"line\": [ { \"kind\": \"tools\", \"what\": \"saw\", \"price\": \"25.00\" } ] } ] }";

GbBoat *
small_build_new (void)
{
  g_autoptr (GError) error = NULL;
  GbBoat *boat = gb_text_form_read (text, -1, &error);

  g_assert_no_error (error);
  return boat;
}

GbFindings *
small_build_find (const GbBoat *boat)
{
  GbFindings *findings = gb_findings_new ();

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, SMALL_BUILD_TODAY);
  return findings;
}
