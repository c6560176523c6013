// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/part_detail.h"

#include "core/parts/voltage_class.h"
#include "ui/parts/part_sections.h"
#include "ui/widgets/hv_tag.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/state_mark.h"
#include "ui/widgets/tab_order.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>

namespace ohmwright::ui {

PartDetail::PartDetail(const DetailGround &ground, QWidget *parent)
    : QScrollArea(parent), m_ground(ground), m_content(new QWidget)
{
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    auto *column = new QVBoxLayout(m_content);
    column->setContentsMargins(14, 14, 10, 20);
    column->setSpacing(18);

    m_none = makeWords(ground.theme, tr("Choose a part in the table to see all of it here."),
                       Lettering::Body, true);
    m_none->setAlignment(Qt::AlignHCenter | Qt::AlignTop);
    m_none->setContentsMargins(0, 60, 0, 0);
    column->addWidget(m_none);

    m_head = new QWidget;
    auto *head = new QVBoxLayout(m_head);
    head->setContentsMargins(0, 0, 0, 0);
    head->setSpacing(6);
    m_name = new SectionTitle(ground.theme, {}, TitleLevel::Page);
    m_name->setWraps(true);
    head->addWidget(m_name);
    auto *marks = new QHBoxLayout;
    marks->setSpacing(12);
    m_state = new StateMark(ground.theme, Mark::Wanted);
    m_highVoltage = new HvTag(ground.theme);
    m_under = makeWords(ground.theme, {}, Lettering::Small, true);
    marks->addWidget(m_state);
    marks->addWidget(m_highVoltage);
    marks->addWidget(m_under, 1);
    m_compare = new QPushButton(tr("Compare with…"));
    m_compare->setToolTip(tr("Side by side with another part or type"));
    connect(m_compare, &QPushButton::clicked, this, [this] { emit compareWanted(m_part); });
    marks->addWidget(m_compare, 0, Qt::AlignTop);
    m_history = new QPushButton(tr("History"));
    m_history->setToolTip(tr("Which of its figures changed, from what to what, and when"));
    connect(m_history, &QPushButton::clicked, this, [this] { emit historyWanted(m_part); });
    marks->addWidget(m_history, 0, Qt::AlignTop);
    head->addLayout(marks);
    column->addWidget(m_head);

    add(new LifeSection(ground));
    m_questions = new QuestionsSection(ground);
    add(m_questions);
    add(new StockSection(ground));
    add(new RatingsSection(ground));
    add(new CircuitsSection(ground));
    add(new FieldsSection(ground, tr("Description"), describingFields()));
    add(new AssemblySection(ground));
    add(new SourceSection(ground));
    add(new FieldsSection(ground, tr("Buying"), buyingFields()));
    m_deadlines = new DeadlinesSection(ground);
    add(m_deadlines);
    add(new FieldsSection(ground, tr("Warranty"), warrantyFields()));
    add(new FieldsSection(ground, tr("Damage in transport"), damageFields()));
    add(new PicturesSection(ground));
    column->addStretch(1);
    setWidget(m_content);
    read();
}

void PartDetail::add(DetailSection *section)
{
    m_sections.push_back(section);
    m_content->layout()->addWidget(section);
    connect(section, &DetailSection::said, this, &PartDetail::said);
    connect(section, &DetailSection::taskWanted, this, &PartDetail::taskWanted);
    connect(section, &DetailSection::partWanted, this, &PartDetail::partWanted);
}

void PartDetail::showPart(Id<Part> part)
{
    if (part != m_part)
        verticalScrollBar()->setValue(0);
    m_part = part;
    read();
}

void PartDetail::beginOpening()
{
    m_deadlines->beginOpening();
    // once what was unfolded has its place
    QTimer::singleShot(0, this, [this] { ensureWidgetVisible(m_deadlines, 0, 20); });
}

void PartDetail::setAskedByChecks(std::vector<Question> questions)
{
    m_questions->setAskedByChecks(std::move(questions));
    // the section alone: this comes while somebody may be typing in another
    if (const Part *part = m_ground.book.records().find(m_part)) {
        m_questions->read(*part);
        tabInReadingOrder(*m_content);
    }
}

void PartDetail::bookChanged()
{
    read();
}

void PartDetail::read()
{
    const Records &records = m_ground.book.records();
    const Part *part = records.find(m_part);
    m_none->setVisible(!part);
    m_head->setVisible(part);
    for (DetailSection *section : m_sections)
        section->setVisible(part);
    if (!part)
        return;
    m_name->setText(part->name);
    m_state->setMark(markOf(part->state));
    m_highVoltage->setVisible(isVoltageClassB(records, *part));
    QStringList words{wordOf(part->kind), part->key};
    if (const PartType *type = records.find(part->type))
        words << type->name;
    m_under->setText(words.join(tr(", ")));
    m_compare->setAccessibleName(tr("Compare %1 with…").arg(part->name));
    m_history->setAccessibleName(tr("History of %1").arg(part->name));
    for (DetailSection *section : m_sections)
        section->read(*part);
    tabInReadingOrder(*m_content);
}

} // namespace ohmwright::ui
