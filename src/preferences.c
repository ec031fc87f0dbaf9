/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-preferences"

#include "preferences.h"

#include <glib/gi18n-lib.h>

#include "boat/money.h"
#include "widgets/inspector.h"

/* Choices that are kept by name in the settings, shown as a row with a drop-down. */
typedef struct
{
  const char *key;
  const char *title;
  const char *const *names;  /* in the settings */
  const char *const *labels; /* untranslated */
} ChoiceSetting;

static const char *const appearance_names[] = { "system", "light", "dark", NULL };
static const char *const appearance_labels[] = { N_ ("As the desktop has it"), N_ ("Light"), N_ ("Dark"), NULL };
static const char *const unit_names[] = { "metric", "feet", NULL };
static const char *const unit_labels[] = { N_ ("Metres and kilograms"), N_ ("Feet, inches and pounds"), NULL };

static const ChoiceSetting appearance = { "appearance", N_ ("Appearance"), appearance_names, appearance_labels };
static const ChoiceSetting units = { "units", N_ ("Units"), unit_names, unit_labels };

static guint
index_of (const char *const *names, const char *name)
{
  for (guint i = 0; names[i] != NULL; i++)
    if (g_str_equal (names[i], name))
      return i;
  return 0;
}

static gboolean
get_choice (GValue *value, GVariant *variant, gpointer data)
{
  g_value_set_uint (value, index_of (data, g_variant_get_string (variant, NULL)));
  return TRUE;
}

static GVariant *
set_choice (const GValue *value, const GVariantType *type, gpointer data)
{
  const char *const *names = data;

  return g_variant_new_string (names[g_value_get_uint (value)]);
}

static GtkWidget *
make_choice_row (GSettings *settings, const ChoiceSetting *choice)
{
  GtkWidget *row = adw_combo_row_new ();
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);

  for (guint i = 0; choice->labels[i] != NULL; i++)
    gtk_string_list_append (labels, _ (choice->labels[i]));
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ (choice->title));
  adw_combo_row_set_model (ADW_COMBO_ROW (row), G_LIST_MODEL (labels));
  g_settings_bind_with_mapping (settings, choice->key, row, "selected", G_SETTINGS_BIND_DEFAULT, get_choice, set_choice,
                                (gpointer) choice->names, NULL);
  return row;
}

static void
currency_changed_cb (GtkEditable *entry, GSettings *settings)
{
  g_autofree char *currency = g_utf8_strup (gtk_editable_get_text (entry), -1);

  if (gb_currency_is_valid (currency))
    {
      g_settings_set_string (settings, "currency", currency);
      gtk_widget_remove_css_class (GTK_WIDGET (entry), "error");
    }
  else
    gtk_widget_add_css_class (GTK_WIDGET (entry), "error");
}

static GtkWidget *
make_currency_row (GSettings *settings)
{
  GtkWidget *row = adw_entry_row_new ();
  g_autofree char *currency = g_settings_get_string (settings, "currency");

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ ("Currency, three letters"));
  gtk_editable_set_text (GTK_EDITABLE (row), currency);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (row), 3);
  g_signal_connect_object (row, "changed", G_CALLBACK (currency_changed_cb), settings, 0);
  return row;
}

static AdwPreferencesPage *
make_person_page (void)
{
  g_autoptr (GSettings) settings = g_settings_new (GB_APP_ID);
  AdwPreferencesPage *page = ADW_PREFERENCES_PAGE (adw_preferences_page_new ());
  AdwPreferencesGroup *look = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
  AdwPreferencesGroup *start = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());

  adw_preferences_page_set_name (page, "person");
  adw_preferences_page_set_title (page, _ ("Preferences"));
  adw_preferences_page_set_icon_name (page, "preferences-system-symbolic");
  adw_preferences_group_set_title (start, _ ("New builds"));
  adw_preferences_group_set_description (start, _ ("What a new build starts with; each build can be set otherwise."));
  adw_preferences_group_add (look, make_choice_row (settings, &appearance));
  adw_preferences_group_add (start, make_choice_row (settings, &units));
  adw_preferences_group_add (start, make_currency_row (settings));
  adw_preferences_page_add (page, look);
  adw_preferences_page_add (page, start);
  return page;
}

/* The toolkit's window may outlive its closing; the build must not wait for it. */
static void
let_go_cb (GtkWidget *window, GbInspector *inspector)
{
  gb_inspector_show (inspector, NULL, GB_RECORD_MATERIAL, NULL, 0);
}

static AdwPreferencesPage *
make_build_page (GtkWidget *window, GbProject *project)
{
  static const gint64 build_id = 1;
  AdwPreferencesPage *page = ADW_PREFERENCES_PAGE (adw_preferences_page_new ());
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
  GtkWidget *inspector = gb_inspector_new ();

  adw_preferences_page_set_name (page, "build");
  adw_preferences_page_set_title (page, _ ("This Build"));
  adw_preferences_page_set_icon_name (page, "gb-hulls-symbolic");
  adw_preferences_group_set_title (group, gb_project_get_title (project));
  gb_inspector_show (GB_INSPECTOR (inspector), project, GB_RECORD_BUILD, &build_id, 1);
  g_signal_connect_object (window, "unrealize", G_CALLBACK (let_go_cb), inspector, 0);
  adw_preferences_group_add (group, inspector);
  adw_preferences_page_add (page, group);
  return page;
}

void
gb_preferences_present (GtkWindow *parent, GbProject *project, gboolean show_build)
{
  GtkWidget *window = adw_preferences_window_new ();

  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), 600, 640);
  adw_preferences_window_set_search_enabled (ADW_PREFERENCES_WINDOW (window), FALSE);
  adw_preferences_window_add (ADW_PREFERENCES_WINDOW (window), make_person_page ());
  if (project != NULL)
    adw_preferences_window_add (ADW_PREFERENCES_WINDOW (window), make_build_page (window, project));
  if (project != NULL && show_build)
    adw_preferences_window_set_visible_page_name (ADW_PREFERENCES_WINDOW (window), "build");
  gtk_window_present (GTK_WINDOW (window));
}
