// SPDX-License-Identifier: GPL-3.0-or-later
// Where it came from and what it cost landed; deadlines and opening; stock.
#include "core/budget/budget.h"
#include "core/parts/cautions.h"
#include "core/parts/deadlines.h"
#include "core/parts/life.h"
#include "ui/parts/part_sections.h"
#include "ui/widgets/caution_card.h"
#include "ui/widgets/field.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/section_title.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

SourceSection::SourceSection(const DetailGround &given)
    : DetailSection(given, tr("Where it came from"))
{
    m_words = makeWords(theme(), {});
    column().addWidget(m_words);
    auto *holder = new QWidget;
    m_grid = new QGridLayout(holder);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(18);
    m_grid->setVerticalSpacing(3);
    m_grid->setColumnStretch(0, 1);
    column().addWidget(holder);
}

void SourceSection::addFigure(int row, const QString &what, const QString &first,
                              const QString &second, bool sum)
{
    const Lettering lettering = sum ? Lettering::Strong : Lettering::Body;
    m_grid->addWidget(makeWords(theme(), what, lettering), row, 0);
    int at = 1;
    for (const QString &text : {first, second}) {
        if (!text.isEmpty()) {
            auto *figure = new FigureLabel(theme());
            figure->setLettering(lettering);
            figure->setDecimals(2);
            figure->setFigure(text);
            m_grid->addWidget(figure, row, at, Qt::AlignRight);
        }
        ++at;
    }
}

void SourceSection::fill(const Part &part, bool)
{
    emptyLayout(*m_grid);
    QStringList words;
    if (const Donor *donor = records().find(part.donor)) {
        QString text = tr("Out of %1").arg(donorName(*donor));
        if (donor->distance)
            text += tr(", %1").arg(shown(donor->distance));
        words << text;
        if (!donor->damage.isEmpty())
            words << donor->damage;
        if (!donor->proofOfOwnership.isEmpty())
            words << tr("proof: %1").arg(donor->proofOfOwnership);
    }
    const PurchaseItem *item = records().find(part.bought);
    const Purchase *purchase = item ? records().find(item->purchase) : nullptr;
    if (!purchase) {
        words << tr("Not bought yet, or it came without a purchase.");
        m_words->setText(words.join(tr(". ")));
        return;
    }
    if (const Seller *seller = records().find(purchase->seller))
        words << tr("Bought from %1 (%2) on %3")
                     .arg(seller->name, wordOf(seller->kind), showDate(purchase->orderedOn));
    if (!purchase->reference.isEmpty())
        words << tr("order %1").arg(purchase->reference);
    m_words->setText(words.join(tr(". ")));

    const LandedPurchase landed = landedCost(records(), *purchase);
    const auto mine = std::find_if(landed.items.begin(), landed.items.end(),
                                   [&](const LandedItem &one) { return one.item == item->id; });
    if (mine == landed.items.end())
        return;
    const Money price = item->unitPrice * item->count;
    const bool foreign = purchase->currency != records().build().currency;
    const auto inBook = [&](Money money) {
        return foreign ? showMoney(money, pageStyle()) : QString();
    };
    int row = 0;
    addFigure(row++, item->count == 1 ? tr("price") : tr("price of %1").arg(item->count),
              showMoney(price, pageStyle()), {});
    addFigure(row++, tr("share of freight, duty and tax"),
              showMoney(mine->sharedCosts(price), pageStyle()), {});
    if (!item->coreCharge.isZero())
        addFigure(row++, tr("deposit on the old unit"), showMoney(mine->core, pageStyle()), {});
    addFigure(row++, tr("landed"), showMoney(mine->landed + mine->core, pageStyle()),
              inBook(mine->inBook), true);
    const std::optional<Money> own = landedCostOf(records(), part);
    if (own && *own != mine->inBook)
        addFigure(row++, tr("this one of them"), showMoney(*own, pageStyle()), {}, true);
    if (foreign)
        m_grid->addWidget(
            makeWords(theme(),
                      tr("at %1 %2 for one %3")
                          .arg(purchase->rate.print(), records().build().currency.code(),
                               purchase->currency.code()),
                      Lettering::Small, true),
            row, 0, 1, 3);
}

DeadlinesSection::DeadlinesSection(const DetailGround &given)
    : DetailSection(given, tr("Deadlines"))
{
    m_list = addList(2);
    m_open = new QPushButton(tr("Opened…"));
    m_open->setCheckable(true);
    m_open->setAccessibleName(tr("Record that it was opened"));
    column().addWidget(m_open, 0, Qt::AlignLeft);
    m_form = new QWidget;
    auto *form = new QVBoxLayout(m_form);
    form->setContentsMargins(0, 0, 0, 0);
    form->setSpacing(8);
    form->addWidget(makeWords(theme(), tr("Before a unit is opened, while it may still go back:"),
                              Lettering::Strong));
    int number = 1;
    for (const QString &check : acceptanceChecks())
        form->addWidget(
            makeWords(theme(), tr("%1. %2").arg(number++).arg(check), Lettering::Small));
    if (const auto caution = cautionById(QStringLiteral("high-voltage"))) {
        auto *card = new CautionCard(theme(), caution->title, caution->lines);
        card->setHighVoltage(caution->highVoltage);
        form->addWidget(card);
    }
    m_reason = new QLineEdit;
    m_reasonField = new Field(theme(), tr("Why it was opened"), m_reason);
    m_reasonField->setHint(tr("opening may end warranty and return, by their terms and local law"));
    form->addWidget(m_reasonField);
    auto *record = new QPushButton(tr("Record that it was opened today"));
    form->addWidget(record, 0, Qt::AlignLeft);
    column().addWidget(m_form);
    m_form->hide();
    connect(m_open, &QPushButton::toggled, this, [this](bool open) {
        m_form->setVisible(open);
        if (open)
            m_reason->setFocus(Qt::OtherFocusReason);
    });
    connect(record, &QPushButton::clicked, this, &DeadlinesSection::recordOpening);
    connect(m_reason, &QLineEdit::returnPressed, this, &DeadlinesSection::recordOpening);
}

void DeadlinesSection::fill(const Part &part, bool another)
{
    emptyLayout(*m_list);
    const std::vector<Deadline> deadlines = deadlinesOf(part, book().clock().today());
    for (const Deadline &deadline : deadlines)
        m_list->addWidget(makeWords(theme(), describe(deadline),
                                    deadline.state == DeadlineState::EndingSoon ? Lettering::Strong
                                                                                : Lettering::Body,
                                    deadline.state == DeadlineState::Over));
    if (deadlines.empty())
        m_list->addWidget(makeWords(theme(), tr("No warranty, return or claim is running."),
                                    Lettering::Small, true));
    if (part.openedOn)
        m_list->addWidget(makeWords(
            theme(), tr("Opened %1: %2").arg(showDate(*part.openedOn), part.openedBecause)));
    const bool canOpen = !part.openedOn && part.state != PartState::Wanted &&
                         part.state != PartState::Ordered && !isGone(part.state) &&
                         (part.kind == PartKind::Unit || part.kind == PartKind::Module);
    m_open->setVisible(canOpen);
    if (another || !canOpen) {
        m_open->setChecked(false);
        m_reason->clear();
        m_reasonField->setProblem({});
    }
}

void DeadlinesSection::beginOpening()
{
    if (!m_open->isHidden())
        m_open->setChecked(true);
}

void DeadlinesSection::recordOpening()
{
    const Part *now = partNow();
    if (!now)
        return;
    const QString reason = m_reason->text().trimmed();
    editPart(
        tr("%1 was opened").arg(now->name),
        [&](Part &part) -> Outcome {
            part.openedOn = book().clock().today();
            part.openedBecause = reason;
            return {};
        },
        m_reasonField);
}

StockSection::StockSection(const DetailGround &given) : DetailSection(given, tr("Stock"))
{
    m_words = makeWords(theme(), {}, Lettering::Strong);
    column().addWidget(m_words);
    auto *row = new QHBoxLayout;
    row->setSpacing(12);
    m_amount = new QLineEdit;
    m_amountField = new Field(theme(), tr("How much"), m_amount);
    m_least = new QLineEdit;
    m_leastField = new Field(theme(), tr("Keep at least"), m_least);
    m_take = new QPushButton(tr("− take"));
    m_take->setAccessibleName(tr("Take from stock"));
    auto *add = new QPushButton(tr("+ add"));
    add->setAccessibleName(tr("Add to stock"));
    row->addWidget(m_amountField, 1, Qt::AlignTop);
    auto *buttons = new QHBoxLayout;
    buttons->setContentsMargins(0, m_amountField->fontMetrics().height() + 2, 0, 0);
    buttons->addWidget(m_take);
    buttons->addWidget(add);
    row->addLayout(buttons);
    row->setAlignment(buttons, Qt::AlignTop);
    row->addWidget(m_leastField, 1, Qt::AlignTop);
    column().addLayout(row);
    connect(m_take, &QPushButton::clicked, this, [this] { change(-1); });
    connect(add, &QPushButton::clicked, this, [this] { change(+1); });
    connect(m_amount, &QLineEdit::returnPressed, this, [this] { change(+1); });
    connect(m_least, &QLineEdit::editingFinished, this, &StockSection::setLeast);
}

void StockSection::fill(const Part &part, bool another)
{
    setVisible(part.kind == PartKind::Consumable || part.stock);
    if (another) {
        m_amount->clear();
        m_amountField->setProblem({});
    }
    m_take->setEnabled(part.stock.has_value());
    QString words = part.stock ? tr("%1 in stock").arg(shown(part.stock)) : tr("not counted yet");
    if (part.stock && part.leastStock && part.stock->si() < part.leastStock->si())
        words += tr(", below the least kept");
    m_words->setText(words);
    if (another || !m_leastField->hasProblem()) {
        m_leastField->setProblem({});
        m_least->setText(part.leastStock ? printAmount(*part.leastStock) : QString());
    }
}

void StockSection::change(int sign)
{
    const Part *now = partNow();
    if (!now)
        return;
    const std::optional<Amount> stock = now->stock;
    const auto measure = stock ? std::optional(stock->measure()) : std::nullopt;
    const auto unit = stock ? std::optional(stock->unit()) : std::nullopt;
    const QString typed = m_amount->text().trimmed();
    const Result<Amount> read =
        parseAmount(typed.isEmpty() ? QStringLiteral("1") : typed, pageStyle(), measure, unit);
    if (!read) {
        m_amountField->setProblem(sentenceOf(read.error()));
        m_amount->setFocus();
        return;
    }
    if (read->number() <= 0) {
        m_amountField->setProblem(tr("Give an amount above nought."));
        return;
    }
    Amount next = *read;
    if (stock) {
        next = Amount(stock->number() + sign * read->to(stock->unit()).number(), stock->unit());
        if (next.number() < 0) {
            m_amountField->setProblem(tr("There is only %1.").arg(shown(stock)));
            return;
        }
    }
    const QString what = sign < 0 ? tr("Take %1 of %2") : tr("Add %1 of %2");
    if (editPart(
            what.arg(shown(std::optional(*read)), now->name),
            [&](Part &part) -> Outcome {
                part.stock = next;
                return {};
            },
            m_amountField))
        m_amount->clear();
}

void StockSection::setLeast()
{
    const Part *now = partNow();
    if (!now)
        return;
    const QString typed = m_least->text().trimmed();
    if (typed == (now->leastStock ? printAmount(*now->leastStock) : QString())) {
        m_leastField->setProblem({});
        return;
    }
    editPart(
        tr("Least stock of %1").arg(now->name),
        [&](Part &part) -> Outcome {
            part.leastStock.reset();
            if (typed.isEmpty())
                return {};
            const auto unit = part.stock ? std::optional(part.stock->unit()) : std::nullopt;
            const auto measure = part.stock ? std::optional(part.stock->measure()) : std::nullopt;
            const Result<Amount> read = parseAmount(typed, pageStyle(), measure, unit);
            if (!read)
                return fail(read.error());
            part.leastStock = *read;
            return {};
        },
        m_leastField);
}

} // namespace ohmwright::ui
