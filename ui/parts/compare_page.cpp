// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts/compare_page.h"

#include "core/budget/cost_row.h"
#include "core/verdicts/most_cells.h"
#include "ui/parts/compare_model.h"
#include "ui/parts/detail_section.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/field.h"
#include "ui/widgets/icons.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/tab_order.h"
#include "ui/widgets/wrap_layout.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kFigureWidth = 230;
constexpr int kAgreementWidth = 130;
constexpr int kUnitWidth = 240;
constexpr std::size_t kSharing = 4; // at most so many share the width; more are scrolled to

// "type:KEY", as the command takes it.
QString nameOf(ComparedId id, const Records &records)
{
    if (const auto *type = std::get_if<Id<PartType>>(&id)) {
        const PartType *row = records.find(*type);
        return row ? QString(QStringLiteral("type:") + row->key) : QString();
    }
    const Part *row = records.find(std::get<Id<Part>>(id));
    return row ? QString(QStringLiteral("part:") + row->key) : QString();
}

const PartType *typeOf(ComparedId id, const Records &records)
{
    if (const auto *type = std::get_if<Id<PartType>>(&id))
        return records.find(*type);
    const Part *part = records.find(std::get<Id<Part>>(id));
    return part ? records.find(part->type) : nullptr;
}

// How far two part numbers of one make run alike: a variant differs in its last letters.
qsizetype alike(const PartType &a, const PartType &b)
{
    if (a.make.compare(b.make, Qt::CaseInsensitive) != 0)
        return -1;
    const auto ends = std::mismatch(a.partNumber.begin(), a.partNumber.end(), b.partNumber.begin(),
                                    b.partNumber.end());
    return ends.first - a.partNumber.begin();
}

} // namespace

ComparePage::ComparePage(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent), m_book(book), m_theme(theme),
      m_title(new SectionTitle(theme, tr("Side by side"), TitleLevel::Page)),
      m_pick(new PickOrNew(theme)), m_hint(makeWords(theme, {}, Lettering::Body, true)),
      m_view(new QTableView), m_model(new CompareModel(this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(20, 14, 20, 14);
    column->setSpacing(10);
    column->addWidget(m_title);
    m_pick->setKnownOnly(true);
    auto *field = new Field(theme, tr("Compare with"), m_pick);
    field->setHint(tr("a type or a part; the nearest part numbers first"));
    field->setMaximumWidth(460);
    column->addWidget(field);
    auto *chosen = new QWidget;
    m_chosen = new WrapLayout(chosen, 8);
    column->addWidget(chosen);
    column->addWidget(m_hint);
    m_view->setModel(m_model);
    m_view->setAccessibleName(tr("Figures side by side"));
    auto *delegate = new DraftedTableDelegate(theme, this);
    delegate->dress(*m_view, true);
    m_view->horizontalHeader()->setStretchLastSection(false);
    m_view->horizontalHeader()->setMinimumSectionSize(kAgreementWidth);
    column->addWidget(m_view, 1);
    column->addStretch(0);
    connect(m_pick, &PickOrNew::chosen, this, &ComparePage::add);
    connect(m_pick, &PickOrNew::newName, this, [this, field](const QString &name) {
        field->setProblem(tr("There is no “%1” among the types and parts.").arg(name));
    });
    connect(m_pick, &QLineEdit::textEdited, field, [field] { field->setProblem({}); });
    connect(&book, &Book::changed, this, [this] {
        m_behind = true;
        if (isVisible())
            refresh();
    });
    setFocusProxy(m_pick);
    refresh();
}

void ComparePage::begin(std::vector<ComparedId> units)
{
    const bool here =
        units.size() == 1 && std::ranges::find(m_units, units.front()) != m_units.end();
    if (!here)
        m_units = std::move(units);
    refresh();
    m_pick->setFocus(Qt::OtherFocusReason);
}

void ComparePage::add(const QString &name)
{
    const Result<ComparedId> unit = unitNamed(m_book.records(), name);
    if (!unit)
        return;
    if (std::ranges::find(m_units, *unit) == m_units.end())
        m_units.push_back(*unit);
    refresh();
}

void ComparePage::remove(ComparedId unit)
{
    std::erase(m_units, unit);
    refresh();
    m_pick->setFocus(Qt::OtherFocusReason);
}

void ComparePage::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_behind)
        refresh();
}

void ComparePage::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Escape) {
        emit left();
        return;
    }
    QWidget::keyPressEvent(event);
}

std::vector<KnownName> ComparePage::offered() const
{
    const Records &records = m_book.records();
    const PartType *like = m_units.empty() ? nullptr : typeOf(m_units.front(), records);
    struct Offer
    {
        KnownName known;
        qsizetype rank;
    };
    std::vector<Offer> offers;
    const auto offer = [&](ComparedId id, KnownName known, const PartType *type) {
        if (std::ranges::find(m_units, id) == m_units.end())
            offers.push_back({std::move(known), like && type ? alike(*like, *type) : -1});
    };
    for (const PartType &type : records.all<PartType>())
        offer(type.id,
              {nameOf(type.id, records), tr("%1, %2 %3").arg(type.name, type.make, type.partNumber),
               tr("type")},
              &type);
    for (const Part &part : records.all<Part>())
        offer(part.id, {nameOf(part.id, records), part.name, wordOf(part.state)},
              records.find(part.type));
    std::ranges::stable_sort(offers, std::greater<>(), &Offer::rank);
    std::vector<KnownName> known;
    known.reserve(offers.size());
    for (Offer &one : offers)
        known.push_back(std::move(one.known));
    return known;
}

void ComparePage::refresh()
{
    m_behind = false;
    const Records &records = m_book.records();
    std::erase_if(m_units, [&](ComparedId id) { return nameOf(id, records).isEmpty(); });
    m_pick->setKnown(offered());
    m_pick->setKey({});
    Result<SideBySide> compared = compareUnits(records, m_units);
    std::vector<ComparedUnit> units;
    if (compared) {
        const BookInputs inputs(records, m_book.clock().today());
        for (std::optional<ComparedRow> row :
             {mostCellsRow(inputs, compared->units), landedCostRow(records, compared->units)})
            if (row)
                compared->rows.push_back(std::move(*row));
        units = compared->units;
    } else if (!m_units.empty()) {
        units.push_back(*comparedUnit(records, m_units.front()));
    }
    showUnits(units);
    m_title->setRemark(compared ? summary(*compared) : QString());
    m_hint->setText(m_units.empty()
                        ? tr("Two units in one case with another suffix can have other ratings. "
                             "Choose two types or parts, or more, to see what differs.")
                        : tr("Choose what to compare it with."));
    m_hint->setVisible(!compared);
    m_view->setVisible(compared.has_value());
    m_model->setCompared(compared ? std::move(*compared) : SideBySide());
    QHeaderView &header = *m_view->horizontalHeader();
    for (int section = 0; section < m_model->columnCount(); ++section) {
        const bool unit = section > 0 && section < m_model->columnCount() - 1;
        header.setSectionResizeMode(section, unit && m_units.size() <= kSharing
                                                 ? QHeaderView::Stretch
                                                 : QHeaderView::Interactive);
        if (!unit)
            header.resizeSection(section, section == 0 ? kFigureWidth : kAgreementWidth);
        else if (m_units.size() > kSharing)
            header.resizeSection(section, kUnitWidth);
    }
}

// A button that shows each with all of it, and one that takes it out.
void ComparePage::showUnits(const std::vector<ComparedUnit> &units)
{
    emptyLayout(*m_chosen);
    for (const ComparedUnit &unit : units) {
        auto *both = new QWidget;
        auto *row = new QHBoxLayout(both);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(2);
        const ComparedId id = unit.id;
        auto *show = new QPushButton(tr("%1, %2").arg(unit.name, unit.under));
        show->setAccessibleName(tr("Show %1").arg(unit.name));
        connect(show, &QPushButton::clicked, this, [this, id] { emit unitWanted(id); });
        row->addWidget(show);
        auto *out = new QPushButton(themedIcon(m_theme, QStringLiteral("remove")), {});
        out->setAccessibleName(tr("Take out %1").arg(unit.name));
        out->setToolTip(tr("Take out"));
        connect(out, &QPushButton::clicked, this, [this, id] { remove(id); });
        row->addWidget(out);
        m_chosen->addWidget(both);
        both->show();
    }
    tabInReadingOrder(*this); // new buttons would come behind the table
}

} // namespace ohmwright::ui
