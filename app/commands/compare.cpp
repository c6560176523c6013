// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright compare BOOK KEY KEY …
#include "core/parts/compare.h"

#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/budget/cost_row.h"
#include "core/verdicts/most_cells.h"

#include <QCoreApplication>
#include <QJsonArray>

namespace ohmwright {

namespace {

class CompareCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(CompareCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("compare"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Types and parts side by side: every figure in force with its evidence, what "
                  "differs and what is not known.");
    }
    [[nodiscard]] QString arguments() const override
    {
        return QStringLiteral("BOOK KEY KEY [KEY …]");
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.isEmpty())
            return refuse(io, tr("Say which book and what: ohmwright compare BOOK KEY KEY."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Records &records = (*book)->records();
        std::vector<ComparedId> ids;
        for (const QString &name : positional.mid(1)) {
            const Result<ComparedId> id = unitNamed(records, name);
            if (!id)
                return refuse(io, id.error());
            ids.push_back(*id);
        }
        Result<SideBySide> compared = compareUnits(records, ids);
        if (!compared)
            return refuse(io, compared.error());
        const BookInputs inputs(records, io.clock.today());
        for (std::optional<ComparedRow> row :
             {mostCellsRow(inputs, compared->units), landedCostRow(records, compared->units)})
            if (row)
                compared->rows.push_back(std::move(*row));
        if (options.isSet(QStringLiteral("json")))
            printJson(io, asJson(*compared));
        else
            printText(*compared, io.out);
        return kExitDone;
    }

private:
    // Figure by figure, a line for each unit: evidence is too long for columns side by side.
    static void printText(const SideBySide &compared, QTextStream &out)
    {
        std::vector<QStringList> rows;
        rows.reserve(compared.units.size());
        for (const ComparedUnit &unit : compared.units)
            rows.push_back({unit.head, unit.under});
        out << columns(rows) << '\n';
        rows.clear();
        for (const ComparedRow &row : compared.rows) {
            rows.push_back({tr("%1: %2").arg(row.what, wordOf(row.agreement))});
            for (std::size_t i = 0; i < row.cells.size(); ++i) {
                const ComparedCell &cell = row.cells[i];
                rows.push_back({QString(QStringLiteral("  ") + compared.units[i].head),
                                cell.value.isEmpty() ? tr("not known") : cell.value, cell.from});
            }
        }
        if (!rows.empty())
            out << columns(rows) << '\n';
        out << ohmwright::summary(compared) << '\n'
            << tr("As recorded; papers and plate decide, and measure what can be measured.")
            << '\n';
        out.flush();
    }

    static QJsonObject asJson(const ComparedCell &cell)
    {
        QJsonObject made{{QStringLiteral("known"), !cell.value.isEmpty()}};
        const auto tell = [&](const char *name, const QString &text) {
            if (!text.isEmpty())
                made.insert(QString::fromLatin1(name), text);
        };
        tell("value", cell.amount ? printAmount(*cell.amount) : cell.value);
        if (cell.duration)
            tell("duration", printAmount(*cell.duration));
        if (cell.evidence) {
            tell("evidence", wordOf(*cell.evidence));
            tell("source", cell.source);
        } else {
            tell("from", cell.from);
        }
        if (cell.ofType)
            made.insert(QStringLiteral("of_type"), true);
        if (cell.clash)
            made.insert(QStringLiteral("clash"), true);
        if (cell.stale)
            made.insert(QStringLiteral("stale"), true);
        return made;
    }

    static QJsonObject asJson(const SideBySide &compared)
    {
        QJsonArray units;
        for (const ComparedUnit &unit : compared.units)
            units << QJsonObject{
                {QStringLiteral("table"), std::holds_alternative<Id<PartType>>(unit.id)
                                              ? QStringLiteral("type")
                                              : QStringLiteral("part")},
                {QStringLiteral("key"), unit.key},
                {QStringLiteral("name"), unit.name}};
        QJsonArray rows;
        for (const ComparedRow &row : compared.rows) {
            QJsonArray cells;
            for (const ComparedCell &cell : row.cells)
                cells << asJson(cell);
            QJsonObject made{{QStringLiteral("what"), row.what},
                             {QStringLiteral("agreement"), wordOf(row.agreement)},
                             {QStringLiteral("cells"), cells}};
            if (row.figure) {
                made.insert(QStringLiteral("quantity"), wordOf(row.figure->quantity));
                made.insert(QStringLiteral("kind"), wordOf(row.figure->kind));
                made.insert(QStringLiteral("basis"), wordOf(row.figure->basis));
                if (row.figure->current)
                    made.insert(QStringLiteral("current"), wordOf(*row.figure->current));
            }
            rows << made;
        }
        return {{QStringLiteral("units"), units}, {QStringLiteral("rows"), rows}};
    }
};

} // namespace

std::unique_ptr<Command> makeCompareCommand()
{
    return std::make_unique<CompareCommand>();
}

} // namespace ohmwright
