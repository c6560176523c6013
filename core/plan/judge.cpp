// SPDX-License-Identifier: GPL-3.0-or-later
// One need as it stands today: met or not, what to do about it, how long that takes.
#include "core/parts/figures.h"
#include "core/parts/life.h"
#include "core/parts/permits.h"
#include "core/plan/overdue.h"
#include "core/plan/plan_view.h"
#include "core/quantity/dates.h"

#include <QCoreApplication>

#include <algorithm>

namespace ohmwright::plan {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("PlanView", text);
}

int daysUntil(QDate today, QDate day)
{
    return std::max(0, static_cast<int>(today.daysTo(day)));
}

// What subjects are called; ':' cannot stand in a key, so no two of them can be mixed up.
QString subjectOf(const char *kind, const QString &key)
{
    return QLatin1String(kind) + u':' + key;
}

struct Judged
{
    MoveKind move = MoveKind::Order;
    QString reason;
    int days = 0;
    std::optional<QDate> by; // LeafNeed's
};

Judged toBuy(const Part &part, const QString &why)
{
    Judged j;
    j.move = MoveKind::Order;
    j.days = part.leadDays.value_or(kAssumedLeadDays);
    j.reason = part.leadDays ? tr("%1; %2 days from order").arg(why).arg(j.days)
                             : tr("%1; %2 days from order assumed").arg(why).arg(j.days);
    return j;
}

Judged onItsWay(const Records &records, const Part &part, QDate today)
{
    Judged j;
    j.move = MoveKind::Chase;
    const PurchaseItem *item = records.find(part.bought);
    const Purchase *purchase = item ? records.find(item->purchase) : nullptr;
    const int lead = part.leadDays.value_or(kAssumedLeadDays);
    j.by = chaseOn(records, part, today);
    const bool overdue = overdueSince(records, part, today).has_value();
    j.days = overdue ? lead : j.by ? daysUntil(today, *j.by) : lead;
    if (!purchase)
        j.reason = tr("ordered, no day promised");
    else if (!purchase->promisedOn)
        j.reason = overdue ? tr("ordered %1, no day promised; %2 days counted once more")
                                 .arg(showDate(purchase->orderedOn))
                                 .arg(lead)
                           : tr("ordered %1, no day promised").arg(showDate(purchase->orderedOn));
    else
        j.reason = overdue ? tr("ordered, promised for %1, overdue; %2 days counted once more")
                                 .arg(showDate(*purchase->promisedOn))
                                 .arg(lead)
                           : tr("ordered, promised for %1").arg(showDate(*purchase->promisedOn));
    return j;
}

// A part that must have got as far as `wanted`.
Judged judgePart(const Records &records, const Part &part, PartState wanted, QDate today)
{
    switch (part.state) {
    case PartState::Wanted:
        return toBuy(part,
                     part.kind == PartKind::Service ? tr("not booked yet") : tr("not ordered yet"));
    case PartState::Ordered:
        return onItsWay(records, part, today);
    case PartState::InHand:
        if (wanted == PartState::Tested ||
            (wanted == PartState::Fitted && !mayMove(part.kind, part.state, PartState::Fitted)))
            return {MoveKind::Test, tr("in hand, not tested yet"), 0, {}};
        return {MoveKind::Do, tr("in hand, not fitted yet"), 0, {}};
    case PartState::Tested:
        return {MoveKind::Do, tr("tested, not fitted yet"), 0, {}};
    case PartState::Fitted:
        return {MoveKind::Do, tr("fitted"), 0, {}};
    case PartState::Quarantined:
        return toBuy(part, tr("quarantined: find another"));
    case PartState::Returned:
    case PartState::Sold:
    case PartState::Scrapped:
        return toBuy(part, tr("%1: find another").arg(wordOf(part.state)));
    }
    return {};
}

Judged judgeLetter(const Letter &letter, QDate today)
{
    const int usual = letter.answerDays.value_or(kAssumedAnswerDays);
    const QString takes = letter.answerDays ? tr("an answer takes %1 days").arg(usual)
                                            : tr("%1 days for an answer assumed").arg(usual);
    switch (letter.state) {
    case LetterState::ToAsk:
        return {MoveKind::Ask, tr("not asked yet; %1").arg(takes), usual, {}};
    case LetterState::Refused:
        return {MoveKind::Ask, tr("refused: ask what would be accepted; %1").arg(takes), usual, {}};
    case LetterState::Granted:
        return {MoveKind::Ask,
                tr("ran out on %1: ask again; %2").arg(showDate(*letter.validUntil), takes),
                usual,
                {}};
    case LetterState::Asked:
        break;
    }
    Judged j;
    j.move = MoveKind::Chase;
    j.by = chaseOn(letter, today);
    const std::optional<QDate> since = overdueSince(letter, today);
    j.days = since ? std::max(usual, daysToAskAgain(letter, today))
                   : daysUntil(today, letter.askedOn->addDays(usual));
    j.reason = tr("asked %1, no answer").arg(showDate(*letter.askedOn));
    if (since)
        j.reason +=
            tr(", overdue since %1; %2 days counted once more").arg(showDate(*since)).arg(j.days);
    if (letter.askAgainOn)
        j.reason += tr("; ask again %1").arg(showDate(*letter.askAgainOn));
    return j;
}

bool letterHolds(const Letter &letter, QDate today)
{
    return letter.state == LetterState::Granted &&
           (!letter.validUntil || *letter.validUntil >= today);
}

void judgeConsumable(const Records &records, const Part &part, const TaskNeed &need, double left,
                     QDate today, LeafNeed &leaf)
{
    const Amount &amount = *need.amount;
    leaf.met = part.stock && StockShares::isEnough(left, amount);
    if (leaf.met)
        return;
    const QString have =
        !part.stock ? tr("none in stock")
        : left < part.stock->si()
            ? tr("%1 in stock, promised to tasks before it").arg(printAmount(*part.stock))
            : tr("%1 in stock").arg(printAmount(*part.stock));
    const Judged j = part.state == PartState::Ordered
                         ? onItsWay(records, part, today)
                         : toBuy(part, tr("%1, %2 needed").arg(have, printAmount(amount)));
    leaf.move = j.move;
    leaf.reason = j.reason;
    leaf.daysToMeet = j.days;
    leaf.by = j.by;
}

} // namespace

LeafNeed judge(const Records &records, const TaskNeed &need, const StockShares &shares, QDate today)
{
    using Kind = ohmwright::NeedKind;
    LeafNeed leaf;
    const auto take = [&](const Judged &j) {
        leaf.move = j.move;
        leaf.reason = j.reason;
        leaf.daysToMeet = j.days;
        leaf.by = j.by;
    };
    const Part *part = records.find(need.part);
    if (part) {
        leaf.subject = subjectOf("part", part->key);
        leaf.subjectName = part->name;
    } else {
        leaf.subject = subjectOf(wordOf(need.kind).toLatin1().constData(), need.what);
        leaf.subjectName = need.what;
    }
    const auto asPart = [&](PartState wanted) {
        leaf.met = part && hasReached(part->state, wanted);
        if (!leaf.met && part)
            take(judgePart(records, *part, wanted, today));
    };
    const auto bySaying = [&](MoveKind move, const QString &reason) {
        leaf.met = need.metOn.has_value();
        take({move, reason, 0, {}});
    };
    switch (need.kind) {
    case Kind::Task:
        break;
    case Kind::Part:
        leaf.kind = NeedKind::Part;
        asPart(need.state.value_or(PartState::InHand));
        break;
    case Kind::Tool:
        leaf.kind = NeedKind::Tool;
        asPart(need.state.value_or(PartState::InHand));
        break;
    case Kind::Figure:
        leaf.kind = NeedKind::Figure;
        leaf.met = part && answersNeed(records, *part, need);
        if (part) {
            leaf.subject += u':' + wordOf(*need.quantity) +
                            (need.basis ? u':' + wordOf(*need.basis) : QString());
            leaf.subjectName = tr("%1 of %2")
                                   .arg((need.basis ? wordOf(*need.basis) + u' ' : QString()) +
                                            wordOf(*need.quantity),
                                        part->name);
        }
        take({MoveKind::FindOut, tr("not known"), 0, {}});
        break;
    case Kind::Consumable:
        leaf.kind = NeedKind::Consumable;
        if (part && need.amount)
            judgeConsumable(records, *part, need, shares.leftFor(need, *part), today, leaf);
        break;
    case Kind::Service:
        leaf.kind = NeedKind::Service;
        if (part)
            asPart(PartState::InHand);
        else
            bySaying(MoveKind::Order, tr("not booked yet"));
        break;
    case Kind::Money:
        leaf.kind = NeedKind::Money;
        bySaying(MoveKind::Pay,
                 tr("%1 to be paid").arg(need.money ? printMoney(*need.money) : QString()));
        break;
    case Kind::Test: {
        leaf.kind = NeedKind::Test;
        if (const TestRecord *test = records.find(need.test)) {
            leaf.met = test->result == TestResult::Passed;
            leaf.subject = subjectOf("test", test->key);
            leaf.subjectName = test->name;
            take({MoveKind::Test,
                  test->result == TestResult::Failed
                      ? tr("failed %1: mend and repeat").arg(showDate(*test->doneOn))
                      : tr("not done yet"),
                  0,
                  {}});
        }
        break;
    }
    case Kind::Letter:
        leaf.kind = NeedKind::Letter;
        if (const Letter *letter = records.find(need.letter)) {
            leaf.met = letterHolds(*letter, today);
            leaf.subject = subjectOf("letter", letter->key);
            leaf.subjectName = letter->subject;
            if (!leaf.met)
                take(judgeLetter(*letter, today));
        }
        break;
    case Kind::Person:
        leaf.kind = NeedKind::Person;
        bySaying(MoveKind::Ask, tr("nobody has agreed yet"));
        break;
    case Kind::Permit:
        leaf.kind = NeedKind::Permit;
        bySaying(MoveKind::Ask, tr("no permit yet"));
        if (const WorkPermit *permit = records.find(need.permit)) {
            const QStringList lacking = lackingOf(*permit, today);
            leaf.met = lacking.isEmpty();
            leaf.subject = subjectOf("permit", permit->key);
            leaf.subjectName = permit->name;
            leaf.reason = lacking.join(tr(", "));
        }
        break;
    case Kind::Interface:
        leaf.kind = NeedKind::Interface;
        if (const Interface *interface = records.find(need.interface)) {
            leaf.met = interface->state == InterfaceState::Talks;
            leaf.subject = subjectOf("interface", interface->key);
            leaf.subjectName = interface->name;
            if (!leaf.met)
                take({MoveKind::FindOut,
                      interface->state == InterfaceState::Understood
                          ? tr("understood, but has not talked yet")
                          : tr("it cannot be made to talk yet"),
                      0,
                      {}});
        }
        break;
    }
    leaf.key = QString::number(need.id.value());
    return leaf;
}

} // namespace ohmwright::plan
