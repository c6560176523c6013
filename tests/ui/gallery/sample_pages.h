// SPDX-License-Identifier: GPL-3.0-or-later
// Invented pages that show every widget once.
#pragma once

class QWidget;

namespace ohmwright::ui {

class Theme;

QWidget *makeTablePage(const Theme &theme);    // chips, table, detail with marks and figures
QWidget *makeFormPage(const Theme &theme);     // fields, pick or new, photos, caution
QWidget *makeMoneyPage(const Theme &theme);    // bars and columns of figures
QWidget *makeControlsPage(const Theme &theme); // standard controls in every state, all marks
QWidget *makeEmptyPage(const Theme &theme);

} // namespace ohmwright::ui
