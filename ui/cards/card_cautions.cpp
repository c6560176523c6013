// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cards/card_cautions.h"

#include "core/parts/cautions.h"
#include "core/parts/guided_tests.h"
#include "ui/widgets/caution_card.h"

#include <QLayoutItem>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

QStringList cautionsOf(const std::string &table, const QString &kind)
{
    if (table == RecordTraits<TestRecord>::table) {
        const std::optional<TestKind> test = fromWord<TestKind>(kind);
        return test ? cautionsBefore(*test) : QStringList();
    }
    if (table == RecordTraits<WorkPermit>::table)
        return {QStringLiteral("high-voltage"), QStringLiteral("never-alone")};
    return {};
}

} // namespace

CardCautions::CardCautions(const Theme &theme, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_column(new QVBoxLayout(this))
{
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(8);
    hide();
}

void CardCautions::show(const std::string &table, const QString &kind)
{
    const QStringList wanted = cautionsOf(table, kind);
    setVisible(!wanted.isEmpty());
    if (wanted == m_shown)
        return;
    m_shown = wanted;
    while (QLayoutItem *item = m_column->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    for (const QString &id : wanted)
        if (const std::optional<CautionText> caution = cautionById(id)) {
            auto *card = new CautionCard(m_theme, caution->title, caution->lines);
            card->setHighVoltage(caution->highVoltage);
            if (m_column->count() > 0) // the first is what is most its own
                card->fold();
            m_column->addWidget(card);
        }
}

} // namespace ohmwright::ui
