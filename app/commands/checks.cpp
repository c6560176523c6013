// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright checks BOOK [--check ID]
#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/checks/margin_words.h"
#include "core/checks/origin_words.h"
#include "core/verdicts/judge_book.h"
#include "core/verdicts/turning_words.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <algorithm>

namespace ohmwright {

namespace {

QJsonArray asJson(const QStringList &lines)
{
    return QJsonArray::fromStringList(lines);
}

QJsonObject asJson(const CheckInput &input)
{
    const Origin &from = input.origin;
    QJsonObject object{{QStringLiteral("name"), from.name},
                       {QStringLiteral("symbol"), input.symbol},
                       {QStringLiteral("known"), !input.shown.isEmpty()}};
    if (!input.shown.isEmpty()) {
        object.insert(QStringLiteral("value"), input.shown);
        object.insert(QStringLiteral("evidence"), wordOf(from.evidence));
    }
    const auto tell = [&](const char *name, const QString &text) {
        if (!text.isEmpty())
            object.insert(QString::fromLatin1(name), text);
    };
    tell("path", from.path);
    tell("source", from.source);
    tell("address", from.field);
    if (from.stale)
        object.insert(QStringLiteral("stale"), true);
    if (from.clash)
        object.insert(QStringLiteral("clash"), true);
    return object;
}

QJsonObject asJson(const Check &check)
{
    QJsonArray inputs;
    for (const CheckInput &input : check.inputs)
        inputs << asJson(input);
    QJsonArray steps;
    for (const CheckStep &step : check.steps)
        steps << QJsonObject{{QStringLiteral("what"), step.what},
                             {QStringLiteral("formula"), step.formula},
                             {QStringLiteral("worked"), step.worked},
                             {QStringLiteral("result"), step.result}};
    QJsonArray comparisons;
    for (const Comparison &held : check.comparisons)
        comparisons << QJsonObject{{QStringLiteral("what"), held.what},
                                   {QStringLiteral("value"), held.value},
                                   {QStringLiteral("relation"), held.relation},
                                   {QStringLiteral("limit"), held.limit},
                                   {QStringLiteral("limit_from"), held.limitFrom},
                                   {QStringLiteral("margin"), held.margin},
                                   {QStringLiteral("margin_words"), marginWords(held.margin)},
                                   {QStringLiteral("verdict"), wordOf(held.verdict)}};
    QJsonArray loosened;
    for (const Loosened &one : check.loosened)
        loosened << QJsonObject{{QStringLiteral("name"), one.name},
                                {QStringLiteral("published"), one.published},
                                {QStringLiteral("own"), one.own},
                                {QStringLiteral("source"), one.source},
                                {QStringLiteral("reason"), one.reason}};
    QJsonObject object{{QStringLiteral("check"), check.id},
                       {QStringLiteral("subject"), check.subject},
                       {QStringLiteral("title"), check.title},
                       {QStringLiteral("protects"), wordOf(check.protects)},
                       {QStringLiteral("verdict"), wordOf(check.verdict)},
                       {QStringLiteral("sentence"), check.sentence},
                       {QStringLiteral("result"), check.result},
                       {QStringLiteral("inputs"), inputs},
                       {QStringLiteral("steps"), steps},
                       {QStringLiteral("comparisons"), comparisons},
                       {QStringLiteral("source"), check.source},
                       {QStringLiteral("unknowns"), asJson(check.unknowns)},
                       {QStringLiteral("doubts"), asJson(check.doubts)},
                       {QStringLiteral("refusals"), asJson(check.refusals)},
                       {QStringLiteral("turned_by"), asJson(check.turnedBy)},
                       {QStringLiteral("afterwards"), check.afterwards},
                       {QStringLiteral("loosened"), loosened}};
    if (check.margin) {
        object.insert(QStringLiteral("margin"), *check.margin);
        object.insert(QStringLiteral("margin_words"), marginWords(*check.margin));
    }
    if (check.weakest) {
        object.insert(QStringLiteral("weakest_evidence"), wordOf(*check.weakest));
        object.insert(QStringLiteral("weakest_input"), check.weakestInput);
    }
    if (check.publishedVerdict)
        object.insert(QStringLiteral("published_verdict"), wordOf(*check.publishedVerdict));
    return object;
}

class ChecksCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(ChecksCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("checks"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("The engineering checks, by what they protect, worst first; one kind of them, or "
                  "one alone, with its working and what would turn it. Exit 1 unless all of them "
                  "hold or are tight.");
    }
    [[nodiscard]] QString arguments() const override { return QStringLiteral("BOOK [--check ID]"); }

    void describe(QCommandLineParser &parser) const override
    {
        parser.addOption(
            {QStringLiteral("check"),
             tr("Only this check, worked line by line; with a colon and the key of what it is "
                "about, of that alone: branch_ratings:pack-main."),
             tr("id")});
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book and nothing more: ohmwright checks BOOK."));
        const QString asked = options.value(QStringLiteral("check"));
        const std::string only = asked.section(u':', 0, 0).toStdString();
        const QString about = asked.section(u':', 1);
        if (const auto ids = checkIds(); options.isSet(QStringLiteral("check")) &&
                                         std::find(ids.begin(), ids.end(), only) == ids.end()) {
            QStringList names;
            for (const std::string_view id : ids)
                names << QString::fromUtf8(id.data(), static_cast<qsizetype>(id.size()));
            return refuse(io, Problem{ProblemCode::BadInput,
                                      tr("There is no check “%1”.").arg(asked.section(u':', 0, 0)),
                                      tr("There are: %1.").arg(names.join(tr(", "))),
                                      {}});
        }
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        std::vector<Check> checks = judgeBook((*book)->records(), io.clock.today(), only);
        if (!about.isEmpty()) {
            QStringList subjects;
            for (const Check &check : checks)
                subjects << check.subject;
            std::erase_if(checks, [&](const Check &check) { return check.subject != about; });
            if (checks.empty())
                return refuse(
                    io,
                    Problem{ProblemCode::BadInput,
                            tr("The book has nothing “%1” that this check is about.").arg(about),
                            tr("There are: %1.").arg(subjects.join(tr(", "))),
                            {}});
        }
        sortByDanger(checks);
        if (!only.empty()) // of all of them it would be a long wait
            for (Check &check : checks)
                check = withTurningPoints((*book)->records(), io.clock.today(), std::move(check));
        if (options.isSet(QStringLiteral("json")))
            printJson(io, summed(checks));
        else if (only.empty())
            printList(checks, io.out);
        else
            printWorked(checks, io.out);
        return std::all_of(checks.begin(), checks.end(), isGood) ? kExitDone : kExitBadNews;
    }

private:
    static bool isGood(const Check &check)
    {
        return check.verdict == Verdict::Holds || check.verdict == Verdict::Tight;
    }

    static QString count(const std::vector<Check> &checks)
    {
        QStringList words;
        for (const Verdict verdict : kWorstFirst) {
            const auto with = std::count_if(checks.begin(), checks.end(), [&](const Check &check) {
                return check.verdict == verdict;
            });
            words << QString(QString::number(with) + u' ' + wordOf(verdict));
        }
        return words.join(tr(", "));
    }

    static QJsonObject summed(const std::vector<Check> &checks)
    {
        QJsonArray array;
        for (const Check &check : checks)
            array << asJson(check);
        return {{QStringLiteral("checks"), array}};
    }

    static void printList(const std::vector<Check> &checks, QTextStream &out)
    {
        if (checks.empty()) {
            out << tr("The book holds nothing to check yet.") << Qt::endl;
            return;
        }
        out << count(checks) << '\n';
        std::optional<Protects> group;
        std::vector<QStringList> rows;
        const auto flush = [&] {
            if (!rows.empty())
                out << columns(rows, {});
            rows.clear();
        };
        for (const Check &check : checks) {
            if (check.protects != group) {
                flush();
                group = check.protects;
                out << '\n' << tr("Protects %1").arg(wordOf(check.protects)) << '\n';
            }
            rows.push_back({QString(QStringLiteral("  ") + wordOf(check.verdict)), check.title,
                            QString(check.sentence + byPublished(check))});
        }
        flush();
        out << '\n'
            << tr("Computed from what was recorded; measure, and let licensed people judge.")
            << Qt::endl;
    }

    static void printWorked(const std::vector<Check> &checks, QTextStream &out)
    {
        if (checks.empty())
            out << tr("The book holds nothing this check is about.") << Qt::endl;
        for (const Check &check : checks)
            printWorked(check, out);
    }

    static void printWorked(const Check &check, QTextStream &out)
    {
        out << check.title << '\n' << check.sentence << byPublished(check) << '\n';
        section(out, tr("Given"));
        std::vector<QStringList> rows;
        rows.reserve(check.inputs.size());
        for (const CheckInput &input : check.inputs)
            rows.push_back({QString(QStringLiteral("  ") + input.symbol), input.origin.name,
                            input.shown.isEmpty() ? tr("not known") : input.shown,
                            input.shown.isEmpty() ? QString() : evidenceOf(input.origin)});
        out << columns(rows, {});
        if (!check.steps.empty())
            section(out, tr("Worked"));
        rows.clear();
        for (const CheckStep &step : check.steps)
            rows.push_back({QString(QStringLiteral("  ") + step.what), step.formula, step.worked,
                            step.result});
        if (!rows.empty())
            out << columns(rows, {});
        if (!check.comparisons.empty())
            section(out, tr("Held against"));
        rows.clear();
        for (const Comparison &held : check.comparisons)
            rows.push_back({QString(QStringLiteral("  ") + wordOf(held.verdict)), held.what,
                            QStringList{held.value, held.relation, held.limit}.join(u' '),
                            marginWords(held.margin), held.limitFrom});
        if (!rows.empty())
            out << columns(rows, {});
        for (const Loosened &one : check.loosened)
            out << tr("  Own threshold %1 instead of %2 (%3), because: %4")
                       .arg(one.own, one.published, one.source, one.reason)
                << '\n';
        lines(out, tr("Not known"), check.unknowns);
        lines(out, tr("In doubt"), check.doubts);
        lines(out, tr("Refused"), check.refusals);
        lines(out, tr("What would turn it"), check.turnedBy);
        if (!check.afterwards.isEmpty())
            lines(out, tr("Afterwards"), {check.afterwards});
        lines(out, tr("Source"), {check.source});
        out << Qt::endl;
    }

    // Beside the verdict by a looser threshold of one's own.
    static QString byPublished(const Check &check)
    {
        return check.publishedVerdict
                   ? QString(
                         u' ' +
                         tr("By the published threshold: %1.").arg(wordOf(*check.publishedVerdict)))
                   : QString();
    }

    static void section(QTextStream &out, const QString &heading) { out << heading << '\n'; }

    static void lines(QTextStream &out, const QString &heading, const QStringList &texts)
    {
        if (texts.isEmpty())
            return;
        section(out, heading);
        for (const QString &text : texts)
            out << QStringLiteral("  ") << text << '\n';
    }
};

} // namespace

std::unique_ptr<Command> makeChecksCommand()
{
    return std::make_unique<ChecksCommand>();
}

} // namespace ohmwright
