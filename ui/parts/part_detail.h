// SPDX-License-Identifier: GPL-3.0-or-later
// The right half of the Parts page: one part, section by section, every line of it editable where
// it stands.
#pragma once

#include "core/parts/questions.h"
#include "ui/parts/detail_section.h"

#include <QScrollArea>

#include <vector>

class QLabel;
class QPushButton;

namespace ohmwright::ui {

class DeadlinesSection;
class QuestionsSection;
class HvTag;
class SectionTitle;
class StateMark;

class PartDetail : public QScrollArea
{
    Q_OBJECT

public:
    explicit PartDetail(const DetailGround &ground, QWidget *parent = nullptr);

    // Not set, or no longer in the book: says that none is chosen.
    void showPart(Id<Part> part);
    // At the step that records that it was opened.
    void beginOpening();
    void bookChanged();
    void setAskedByChecks(std::vector<Question> questions);
    [[nodiscard]] Id<Part> part() const { return m_part; }

signals:
    void said(const QString &sentence, ohmwright::ui::Tone tone);
    void taskWanted(const QString &key);
    void partWanted(ohmwright::Id<ohmwright::Part> part);
    void compareWanted(ohmwright::Id<ohmwright::Part> part);
    void historyWanted(ohmwright::Id<ohmwright::Part> part);

private:
    void add(DetailSection *section);
    void read();

    DetailGround m_ground;
    Id<Part> m_part;
    QLabel *m_none;
    QWidget *m_head;
    SectionTitle *m_name;
    StateMark *m_state;
    HvTag *m_highVoltage;
    QLabel *m_under;
    QPushButton *m_compare;
    QPushButton *m_history;
    QWidget *m_content;
    std::vector<DetailSection *> m_sections;
    DeadlinesSection *m_deadlines = nullptr;
    QuestionsSection *m_questions = nullptr;
};

} // namespace ohmwright::ui
