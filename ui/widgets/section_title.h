// SPDX-License-Identifier: GPL-3.0-or-later
// The heading of a page or of a section on it: the words, a quieter remark behind them, and for a
// section a rule to the edge, as on a drawing.
#pragma once

#include <QWidget>

class QHBoxLayout;
class QLabel;

namespace ohmwright::ui {

class Theme;

enum class TitleLevel { Page, Section };

class SectionTitle : public QWidget
{
    Q_OBJECT

public:
    SectionTitle(const Theme &theme, const QString &text, TitleLevel level = TitleLevel::Section,
                 QWidget *parent = nullptr);

    void setText(const QString &text);
    // "12 parts, 3 open questions"; empty for none.
    // A name somebody gave may be too long for one line. Only where the height is free to follow
    // the width: within a scroll area of its own.
    void setWraps(bool wraps);
    void setRemark(const QString &remark);
    // At the right end, behind the rule: a button that belongs to this section.
    void addAtEnd(QWidget *widget);

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    TitleLevel m_level;
    QHBoxLayout *m_layout;
    QLabel *m_text;
    QLabel *m_remark;
    QWidget *m_ruleSpace;
};

} // namespace ohmwright::ui
