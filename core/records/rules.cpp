// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records/rules.h"

#include "core/quantity/dates.h"
#include "core/records/check_figures.h"
#include "core/records/thresholds.h"

#include <QCoreApplication>

#include <array>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Records", text);
}

tl::unexpected<Problem> bad(const char *where, const QString &sentence)
{
    return fail(ProblemCode::BadInput, sentence, {}, QString::fromLatin1(where));
}

Outcome within(const char *where, int value, int least, int most)
{
    if (value >= least && value <= most)
        return {};
    return bad(where,
               tr("%1 must be between %2 and %3.").arg(QLatin1String(where)).arg(least).arg(most));
}

Outcome within(const char *where, const std::optional<int> &value, int least, int most)
{
    return value ? within(where, *value, least, most) : Outcome();
}

// "19:30", or nothing.
Outcome timeOfDay(const char *where, const QString &text)
{
    if (text.isEmpty() || isTimeOfDay(text))
        return {};
    return bad(where, tr("%1 must be a time of the day like 19:30.").arg(QLatin1String(where)));
}

Outcome notNegative(const char *where, Money money)
{
    if (money.minor() >= 0)
        return {};
    return bad(where, tr("%1 cannot be negative.").arg(QLatin1String(where)));
}

Outcome notNegative(const char *where, const std::optional<Money> &money)
{
    return money ? notNegative(where, *money) : Outcome();
}

Outcome inCurrency(const char *where, Money money, Currency currency)
{
    if (money.currency() == currency)
        return {};
    return bad(where, tr("%1 is in %2, but this purchase is in %3.")
                          .arg(QLatin1String(where), money.currency().code(), currency.code()));
}

Outcome ofMeasure(const char *where, const std::optional<Amount> &amount, Measure measure)
{
    if (!amount || amount->measure() == measure)
        return {};
    return bad(where, tr("%1 must be a %2, not a %3.")
                          .arg(QLatin1String(where), measureName(measure),
                               measureName(amount->measure())));
}

Outcome notNegative(const char *where, const std::optional<Amount> &amount)
{
    if (!amount || amount->unit().symbol() == QLatin1String("AWG") || amount->number() >= 0)
        return {};
    return bad(where, tr("%1 cannot be negative.").arg(QLatin1String(where)));
}

bool isSha256(const QString &text)
{
    return text.size() == 64 && std::all_of(text.begin(), text.end(), [](QChar c) {
               return (c >= u'0' && c <= u'9') || (c >= u'a' && c <= u'f');
           });
}

template <class... D>
Outcome firstOf(D &&...checks)
{
    Outcome result;
    (void)((checks ? true : (result = fail(checks.error()), false)) && ...);
    return result;
}

template <class R>
Outcome ownRule(const R &)
{
    return {};
}

Outcome ownRule(const Build &b)
{
    return firstOf(within("hours_per_week", b.hoursPerWeek, 1, 168),
                   within("contingency_percent", b.contingencyPercent, 0, 100),
                   within("confidence_percent", b.confidencePercent, 50, 99),
                   notNegative("saved", b.saved), notNegative("set_aside", b.setAside));
}

Outcome ownRule(const Vehicle &v)
{
    Outcome result = firstOf(
        within("year", v.year, 1880, 2199), ofMeasure("odometer", v.odometer, Measure::Length),
        ofMeasure("wheelbase", v.wheelbase, Measure::Length), notNegative("odometer", v.odometer),
        notNegative("wheelbase", v.wheelbase));
    const std::array masses{std::pair("kerb_mass", &v.kerbMass),
                            std::pair("gross_mass_plate", &v.grossMassPlate),
                            std::pair("front_axle_plate", &v.frontAxlePlate),
                            std::pair("rear_axle_plate", &v.rearAxlePlate),
                            std::pair("front_left", &v.frontLeft),
                            std::pair("front_right", &v.frontRight),
                            std::pair("rear_left", &v.rearLeft),
                            std::pair("rear_right", &v.rearRight)};
    for (const auto &[name, mass] : masses)
        result = firstOf(std::move(result), ofMeasure(name, *mass, Measure::Mass),
                         notNegative(name, *mass));
    return result;
}

Outcome ownRule(const Donor &d)
{
    return firstOf(within("year", d.year, 1880, 2199),
                   ofMeasure("distance", d.distance, Measure::Length),
                   notNegative("distance", d.distance));
}

Outcome ownRule(const Circuit &c)
{
    return firstOf(ofMeasure("nominal_voltage", c.nominalVoltage, Measure::Voltage),
                   ofMeasure("worst_voltage", c.worstVoltage, Measure::Voltage),
                   notNegative("nominal_voltage", c.nominalVoltage),
                   notNegative("worst_voltage", c.worstVoltage));
}

Outcome ownRule(const Branch &b)
{
    return firstOf(ofMeasure("continuous_current", b.continuousCurrent, Measure::Current),
                   ofMeasure("peak_current", b.peakCurrent, Measure::Current),
                   ofMeasure("fuse_rating", b.fuseRating, Measure::Current),
                   ofMeasure("conductor_size", b.conductorSize, Measure::Area),
                   ofMeasure("conductor_length", b.conductorLength, Measure::Length),
                   notNegative("continuous_current", b.continuousCurrent),
                   notNegative("peak_current", b.peakCurrent),
                   notNegative("fuse_rating", b.fuseRating),
                   notNegative("conductor_size", b.conductorSize),
                   notNegative("conductor_length", b.conductorLength));
}

Outcome ownRule(const Part &p)
{
    if (p.partOf && *p.partOf == p.id)
        return bad("part_of", tr("A part cannot be a part of itself."));
    if (p.replacedBy && *p.replacedBy == p.id)
        return bad("replaced_by", tr("A part cannot replace itself."));
    if (p.openedOn && p.openedBecause.trimmed().isEmpty())
        return bad("opened_because",
                   tr("Opening a part may end its warranty: say why it was opened."));
    if (p.estimate && p.estimate->minor() < 0)
        return bad("estimate", tr("estimate cannot be negative."));
    if (p.stock && p.leastStock && p.stock->measure() != p.leastStock->measure())
        return bad("least_stock",
                   tr("least_stock must be counted in the same kind of unit as stock."));
    return firstOf(within("lead_days", p.leadDays, 0, 3650),
                   within("least_lead_days", p.leastLeadDays, 0, 3650),
                   within("most_lead_days", p.mostLeadDays, 0, 3650), notNegative("stock", p.stock),
                   notNegative("least_stock", p.leastStock));
}

Outcome ownRule(const Rating &r)
{
    if (r.part.isSet() == r.type.isSet())
        return bad("part", tr("A rating belongs to one part or to one type."));
    if (r.value && r.value->measure() != measureOf(r.quantity))
        return bad("value", tr("A %1 is given as a %2, not as a %3.")
                                .arg(wordOf(r.quantity), measureName(measureOf(r.quantity)),
                                     measureName(r.value->measure())));
    if (r.kind == RatingKind::Actual && r.basis != RatingBasis::Nominal)
        return bad("basis",
                   tr("An actual value is nominal; continuous, peak and least belong to limits."));
    if (r.kind == RatingKind::Limit && r.basis == RatingBasis::Nominal)
        return bad("basis", tr("A limit is continuous, peak or least, not nominal."));
    if (r.duration && r.basis != RatingBasis::Peak)
        return bad("duration", tr("Only a peak has a duration."));
    if (r.settled && !r.value)
        return bad("settled", tr("An unknown value cannot be the one that stands."));
    return firstOf(ofMeasure("duration", r.duration, Measure::Duration),
                   notNegative("duration", r.duration));
}

Outcome ownRule(const BudgetLine &l)
{
    return notNegative("allowance", l.allowance);
}

Outcome ownRule(const Purchase &p)
{
    return firstOf(inCurrency("freight", p.freight, p.currency),
                   inCurrency("duty", p.duty, p.currency), inCurrency("tax", p.tax, p.currency),
                   notNegative("freight", p.freight), notNegative("duty", p.duty),
                   notNegative("tax", p.tax));
}

Outcome ownRule(const PurchaseItem &i)
{
    return firstOf(within("count", i.count, 1, 100000), notNegative("unit_price", i.unitPrice),
                   notNegative("core_charge", i.coreCharge),
                   inCurrency("core_charge", i.coreCharge, i.unitPrice.currency()));
}

Outcome ownRule(const GotBack &g)
{
    return notNegative("amount", g.amount);
}

Outcome ownRule(const Task &t)
{
    if (t.state == TaskState::Done && !t.doneOn)
        return bad("done_on", tr("A task that is done has the day it was done."));
    if (t.state != TaskState::Done && t.doneOn)
        return bad("done_on", tr("A task that is not done has no day it was done."));
    if (!t.milestone && (t.fixedOn || t.targetOn))
        return bad(t.fixedOn ? "fixed_on" : "target_on",
                   tr("Only a milestone has a date to keep."));
    return firstOf(within("work_minutes", t.workMinutes, 0, 600000),
                   within("least_work_minutes", t.leastWorkMinutes, 0, 600000),
                   within("most_work_minutes", t.mostWorkMinutes, 0, 600000),
                   within("wait_days", t.waitDays, 0, 3650),
                   within("least_wait_days", t.leastWaitDays, 0, 3650),
                   within("most_wait_days", t.mostWaitDays, 0, 3650),
                   within("hands", t.hands, 1, 4), within("fail_percent", t.failPercent, 0, 95));
}

Outcome ownRule(const TaskNeed &n)
{
    const auto need = [&](bool present, const char *where) -> Outcome {
        if (present)
            return {};
        return bad(
            where,
            tr("A need of kind “%1” must say its %2.").arg(wordOf(n.kind), QLatin1String(where)));
    };
    const auto onlyFor = [&](bool present, const char *where,
                             std::initializer_list<NeedKind> kinds) -> Outcome {
        if (!present || std::find(kinds.begin(), kinds.end(), n.kind) != kinds.end())
            return {};
        return bad(where,
                   tr("A need of kind “%1” has no %2.").arg(wordOf(n.kind), QLatin1String(where)));
    };
    Outcome result =
        firstOf(onlyFor(n.after.has_value(), "after", {NeedKind::Task}),
                onlyFor(n.part.has_value(), "part",
                        {NeedKind::Part, NeedKind::Figure, NeedKind::Tool, NeedKind::Consumable,
                         NeedKind::Service}),
                onlyFor(n.state.has_value(), "state", {NeedKind::Part, NeedKind::Tool}),
                onlyFor(n.quantity.has_value(), "quantity", {NeedKind::Figure}),
                onlyFor(n.basis.has_value(), "basis", {NeedKind::Figure}),
                onlyFor(n.amount.has_value(), "amount", {NeedKind::Consumable}),
                onlyFor(n.money.has_value(), "money", {NeedKind::Money}),
                onlyFor(n.test.has_value(), "test", {NeedKind::Test}),
                onlyFor(n.letter.has_value(), "letter", {NeedKind::Letter}),
                onlyFor(n.interface.has_value(), "interface", {NeedKind::Interface}),
                onlyFor(n.permit.has_value(), "permit", {NeedKind::Permit}),
                onlyFor(n.metOn.has_value(), "met_on",
                        {NeedKind::Person, NeedKind::Permit, NeedKind::Money, NeedKind::Service}),
                onlyFor(n.eachTime.has_value(), "each_time",
                        {NeedKind::Part, NeedKind::Service, NeedKind::Letter}),
                notNegative("amount", n.amount));
    if (!result)
        return result;
    if (n.after && *n.after == n.task)
        return bad("after", tr("A task cannot wait on itself."));
    switch (n.kind) {
    case NeedKind::Task:
        return need(n.after.has_value(), "after");
    case NeedKind::Part:
        if (n.state && (*n.state == PartState::Wanted || *n.state > PartState::Fitted))
            return bad("state", tr("A task can need a part ordered, in hand, tested or fitted."));
        return need(n.part.has_value(), "part");
    case NeedKind::Figure:
        return firstOf(need(n.part.has_value(), "part"), need(n.quantity.has_value(), "quantity"));
    case NeedKind::Tool:
        return need(n.part.has_value(), "part");
    case NeedKind::Consumable:
        return firstOf(need(n.part.has_value(), "part"), need(n.amount.has_value(), "amount"));
    case NeedKind::Money:
        return firstOf(need(n.money.has_value(), "money"), need(!n.what.isEmpty(), "what"));
    case NeedKind::Service:
        return need(n.part.has_value() || !n.what.isEmpty(), "what");
    case NeedKind::Test:
        return need(n.test.has_value(), "test");
    case NeedKind::Letter:
        return need(n.letter.has_value(), "letter");
    case NeedKind::Interface:
        return need(n.interface.has_value(), "interface");
    case NeedKind::Permit:
        if (n.permit && n.metOn)
            return bad("met_on", tr("A work permit that is in the book says itself if it holds."));
        return need(n.permit.has_value() || !n.what.isEmpty(), "what");
    case NeedKind::Person:
        return need(!n.what.isEmpty(), "what");
    }
    return {};
}

Outcome ownRule(const Letter &l)
{
    if (l.state == LetterState::ToAsk && l.askedOn)
        return bad("asked_on", tr("A letter still to ask has not been asked yet."));
    if (l.state != LetterState::ToAsk && !l.askedOn)
        return bad("asked_on", tr("A letter that was asked has the day it was asked."));
    return firstOf(within("answer_days", l.answerDays, 0, 3650),
                   within("least_answer_days", l.leastAnswerDays, 0, 3650),
                   within("most_answer_days", l.mostAnswerDays, 0, 3650));
}

Outcome ownRule(const WorkingTime &w)
{
    return firstOf(timeOfDay("starts", w.starts), within("minutes", w.minutes, 1, 1440),
                   within("hands", w.hands, 1, 4));
}

Outcome ownRule(const SpecialDay &d)
{
    return firstOf(within("minutes", d.minutes, 0, 1440), within("hands", d.hands, 1, 4));
}

Outcome ownRule(const WorkEntry &w)
{
    if (!w.minutes && w.started.isEmpty())
        return bad("minutes", tr("Work that is not under way says how long it took."));
    return firstOf(timeOfDay("started", w.started), within("minutes", w.minutes, 0, 2880),
                   within("hands", w.hands, 1, 4));
}

Outcome ownRule(const TestRecord &t)
{
    if (t.result != TestResult::Open && !t.doneOn)
        return bad("done_on", tr("A test with a result has the day it was done."));
    if (t.limit && t.value && t.limit->measure() != t.value->measure())
        return bad("value", tr("The value must be the same kind of quantity as the limit."));
    return {};
}

Outcome ownRule(const MassEntry &m)
{
    return firstOf(ofMeasure("mass", m.mass, Measure::Mass), notNegative("mass", m.mass),
                   ofMeasure("behind_front_axle", m.behindFrontAxle, Measure::Length),
                   ofMeasure("height", m.height, Measure::Length), notNegative("height", m.height));
}

Outcome ownRule(const Attachment &a)
{
    const int owners = int{a.ofVehicle} + int{a.part.has_value()} + int{a.type.has_value()} +
                       int{a.donor.has_value()} + int{a.purchase.has_value()} +
                       int{a.task.has_value()} + int{a.test.has_value()} +
                       int{a.letter.has_value()};
    if (owners > 1)
        return bad("part", tr("An attachment belongs to one thing."));
    if (a.kind == AttachmentKind::Link) {
        if (a.url.isEmpty())
            return bad("url", tr("A link needs its address."));
        if (!a.sha256.isEmpty())
            return bad("sha256", tr("A link has no bytes in the book."));
        return {};
    }
    if (!isSha256(a.sha256))
        return bad("sha256", tr("sha256 must be 64 lower-case hexadecimal digits."));
    return {};
}

Outcome ownRule(const CheckFigure &f)
{
    const FigureInfo *info = checkFigure(f.figure);
    if (!info)
        return bad("figure", tr("No check asks for a figure called “%1”.").arg(f.figure));
    const std::array subjects{
        std::pair("circuit", f.circuit.has_value()), std::pair("branch", f.branch.has_value()),
        std::pair("part", f.part.has_value()), std::pair("type", f.type.has_value()),
        std::pair("test", f.test.has_value())};
    const auto mayBe = [&](std::string_view subject) {
        switch (info->of) {
        case FigureOf::Vehicle:
            return false;
        case FigureOf::Circuit:
            return subject == "circuit";
        case FigureOf::Branch:
            return subject == "branch";
        case FigureOf::Part:
            return subject == "part" || subject == "type";
        case FigureOf::Test:
            return subject == "test";
        }
        return false;
    };
    int named = 0;
    for (const auto &[subject, isSet] : subjects) {
        if (isSet && !mayBe(subject))
            return bad(
                subject,
                tr("“%1” is not a figure of a %2.").arg(labelOf(*info), QLatin1String(subject)));
        named += int{isSet};
    }
    if (named > 1)
        return bad("part", tr("A figure belongs to one thing."));
    if (named == 0 && info->of != FigureOf::Vehicle) {
        constexpr std::array<const char *, 5> kWhere{"", "circuit", "branch", "part", "test"};
        return bad(kWhere[static_cast<std::size_t>(info->of)],
                   tr("“%1” must say what it is a figure of.").arg(labelOf(*info)));
    }
    if (info->measure) {
        if (!f.word.isEmpty())
            return bad("word", tr("“%1” is a number, not a word.").arg(labelOf(*info)));
        return ofMeasure("value", f.value, *info->measure);
    }
    if (f.value)
        return bad("value", tr("“%1” is one of these, not a number: %2.")
                                .arg(labelOf(*info), wordsOf(*info).join(tr(", "))));
    if (!f.word.isEmpty() && !wordsOf(*info).contains(f.word))
        return bad("word", tr("“%1” is not “%2”; it is one of these: %3.")
                               .arg(labelOf(*info), f.word, wordsOf(*info).join(tr(", "))));
    return {};
}

Outcome ownRule(const RatedCurve &c)
{
    if (c.part.has_value() == c.type.has_value())
        return bad("part", tr("A curve belongs to one part or to one type."));
    return {};
}

Outcome ownRule(const OwnThreshold &t)
{
    const ThresholdInfo *info = knownThreshold(t.name);
    if (!info)
        return bad("name", tr("No check holds anything to a threshold called “%1”.").arg(t.name));
    if (Outcome measured = ofMeasure("value", t.value, info->measure); !measured)
        return measured;
    if (t.reason.trimmed().isEmpty() && isLooser(*info, t.value))
        return bad("reason",
                   tr("This is looser than the published %1: say why. Both are shown side "
                      "by side, here and on the build sheet.")
                       .arg(publishedValue(*info)));
    return {};
}

Outcome ownRule(const Interface &i)
{
    if (i.other && *i.other == i.part)
        return bad("other", tr("A part does not talk with itself."));
    if (!i.parameterSha256.isEmpty() && !isSha256(i.parameterSha256))
        return bad("parameter_sha256",
                   tr("parameter_sha256 must be 64 lower-case hexadecimal digits."));
    if (i.state == InterfaceState::Talks && !i.talkedOn)
        return bad("talked_on", tr("An interface that talks has the day it answered."));
    return {};
}

Outcome ownRule(const Wire &w)
{
    return firstOf(ofMeasure("cross_section", w.crossSection, Measure::Area),
                   notNegative("cross_section", w.crossSection),
                   ofMeasure("length", w.length, Measure::Length), notNegative("length", w.length));
}

Outcome ownRule(const SafetySystem &s)
{
    if (s.state == SafetyState::Proven && !s.test)
        return bad("test", tr("A safety system that is proven names the test that proves it."));
    return {};
}

Outcome ownRule(const WorkPermit &p)
{
    if (p.absenceReading && !p.absenceProvenOn)
        return bad("absence_proven_on", tr("A reading has the day it was taken."));
    return firstOf(within("wait_minutes", p.waitMinutes, 0, 100000),
                   ofMeasure("absence_reading", p.absenceReading, Measure::Voltage));
}

// Longer texts than any nameplate or letter; a bound keeps a slip of the clipboard out.
constexpr qsizetype kLongestText = 20000;

template <class R, class T>
Outcome checkField(const Field<R, T> &f, const R &row)
{
    const T &value = row.*f.member;
    if constexpr (std::is_same_v<T, QString>) {
        if (f.presence == Presence::Required && value.trimmed().isEmpty())
            return bad(f.name, tr("%1 is missing.").arg(QLatin1String(f.name)));
        if (value.size() > kLongestText)
            return bad(f.name, tr("%1 is longer than %2 characters.")
                                   .arg(QLatin1String(f.name))
                                   .arg(kLongestText));
        if (value.contains(QChar(0)))
            return bad(f.name, tr("%1 contains a null character.").arg(QLatin1String(f.name)));
        // half of a character: UTF-8, and so the file, has no form for it
        if (!value.isValidUtf16())
            return bad(f.name, tr("%1 contains half a character. Delete it and type it again.")
                                   .arg(QLatin1String(f.name)));
    } else if constexpr (requires { value.isSet(); }) {
        if (!value.isSet())
            return bad(f.name, tr("%1 is missing.").arg(QLatin1String(f.name)));
    } else if constexpr (std::is_same_v<T, QDate>) {
        if (!value.isValid())
            return bad(f.name, tr("%1 is not a date.").arg(QLatin1String(f.name)));
    }
    return {};
}

} // namespace

template <class R>
Outcome checkRecord(const R &row)
{
    Outcome result;
    forEachField<R>([&](const auto &f) {
        if (result)
            result = checkField(f, row);
    });
    if (result) {
        if constexpr (KeyedRecord<R>) {
            if (!isKey(row.key))
                return bad("key",
                           tr("“%1” is not a key: use 1 to 80 lower-case letters, digits and "
                              "- . / _, starting with a letter or digit.")
                               .arg(row.key));
        }
        result = ownRule(row);
    }
    return result;
}

#define OHMWRIGHT_INSTANTIATE(R) template Outcome checkRecord(const R &);
OHMWRIGHT_EACH_RECORD(OHMWRIGHT_INSTANTIATE)
#undef OHMWRIGHT_INSTANTIATE

bool isKey(QStringView text)
{
    const auto plain = [](QChar c) {
        return (c >= u'a' && c <= u'z') || (c >= u'0' && c <= u'9');
    };
    if (text.isEmpty() || text.size() > 80 || !plain(text.front()))
        return false;
    return std::all_of(text.begin(), text.end(), [&](QChar c) {
        return plain(c) || c == u'-' || c == u'.' || c == u'/' || c == u'_';
    });
}

QString keyFrom(const QString &name)
{
    // decomposed, so that é keeps its e
    const QString decomposed = name.normalized(QString::NormalizationForm_KD).toLower();
    QString key;
    bool gap = false;
    for (const QChar c : decomposed) {
        if ((c >= u'a' && c <= u'z') || (c >= u'0' && c <= u'9')) {
            if (gap && !key.isEmpty())
                key += u'-';
            key += c;
            gap = false;
        } else if (c.category() != QChar::Mark_NonSpacing) {
            gap = true;
        }
        if (key.size() >= 60)
            break;
    }
    return key.isEmpty() ? QStringLiteral("item") : key;
}

} // namespace ohmwright
