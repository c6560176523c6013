// SPDX-License-Identifier: GPL-3.0-or-later
// The caution cards that stand before the first field of a dangerous record: a test by its kind, a
// work permit.
#pragma once

#include <QStringList>
#include <QWidget>

#include <string>

class QVBoxLayout;

namespace ohmwright::ui {

class Theme;

class CardCautions : public QWidget
{
    Q_OBJECT

public:
    explicit CardCautions(const Theme &theme, QWidget *parent = nullptr);

    // Of a record of that table; `kind` is what its kind is chosen to be, as a word. Hidden where
    // there is nothing to be careful of.
    void show(const std::string &table, const QString &kind);

private:
    const Theme &m_theme;
    QVBoxLayout *m_column;
    QStringList m_shown;
};

} // namespace ohmwright::ui
