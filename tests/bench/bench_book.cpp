// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/bench_book.h"

#include "core/book/book.h"
#include "core/records/rules.h"
#include "tests/support/fixed_clock.h"

#include <QFile>

#include <algorithm>
#include <random>
#include <set>

namespace ohmwright::bench {

namespace {

const char *const kNouns[] = {"drive unit",     "inverter",     "charger", "contactor box",
                              "battery module", "coolant pump", "busbar",  "fuse holder",
                              "relay",          "cable gland",  "bracket", "heater"};
const char *const kAreas[] = {"papers", "body",     "old drivetrain", "motor",   "battery",
                              "cables", "charging", "12 V",           "cooling", "brakes"};

class Maker
{
public:
    explicit Maker(Size size) : m_size(size) {}

    Records run()
    {
        makeBasics();
        makePurchases();
        makeParts();
        makeTasks();
        fill();
        return std::move(m_records);
    }

private:
    std::int64_t id() { return ++m_id; }
    int below(int n) { return static_cast<int>(m_random() % static_cast<unsigned>(n)); }

    void makeBasics()
    {
        Build build;
        build.id = Id<Build>(1);
        build.title = QStringLiteral("Bench build");
        Vehicle vehicle;
        vehicle.id = Id<Vehicle>(1);
        m_records.all<Build>().assign({build});
        m_records.all<Vehicle>().assign({vehicle});
        for (int i = 0; i < 40; ++i) {
            Seller seller;
            seller.id = Id<Seller>(id());
            seller.name = QStringLiteral("Seller %1").arg(i);
            seller.key = keyFrom(seller.name);
            m_sellers.push_back(seller);
        }
        Circuit circuit;
        circuit.id = Id<Circuit>(id());
        circuit.key = QStringLiteral("traction");
        circuit.name = QStringLiteral("Traction");
        m_circuit = circuit.id;
        m_records.all<Circuit>().assign({circuit});
        for (int i = 0; i < 12; ++i) {
            BudgetLine line;
            line.id = Id<BudgetLine>(id());
            line.name = QStringLiteral("Line %1").arg(i);
            line.key = keyFrom(line.name);
            line.allowance = Money(500000, build.currency);
            m_lines.push_back(line);
        }
    }

    void makePurchases()
    {
        for (int i = 0; i < m_size.parts / 4; ++i) {
            Purchase p;
            p.id = Id<Purchase>(id());
            p.key = QStringLiteral("order-%1").arg(i);
            p.seller = m_sellers[static_cast<std::size_t>(below(40))].id;
            p.orderedOn = QDate(2025, 1, 1).addDays(below(500));
            p.freight = Money(below(9000), p.currency);
            m_purchases.push_back(p);
            for (int n = 0; n < 3; ++n) {
                PurchaseItem item;
                item.id = Id<PurchaseItem>(id());
                item.key = QStringLiteral("item-%1-%2").arg(i).arg(n);
                item.purchase = p.id;
                item.position = n;
                item.name = QString::fromLatin1(kNouns[below(12)]);
                item.unitPrice = Money(below(90000), p.currency);
                item.line = m_lines[static_cast<std::size_t>(below(12))].id;
                m_items.push_back(item);
            }
        }
    }

    void makeParts()
    {
        for (int i = 0; i < m_size.parts; ++i) {
            Part part;
            part.id = Id<Part>(id());
            part.name = QStringLiteral("%1 %2").arg(QString::fromLatin1(kNouns[below(12)])).arg(i);
            part.key = keyFrom(part.name);
            part.state = static_cast<PartState>(below(5));
            part.place = QStringLiteral("shelf %1").arg(below(30));
            part.serial = QStringLiteral("SN-%1").arg(m_random());
            if (i % 4 != 0)
                part.bought = m_items[static_cast<std::size_t>(i) % m_items.size()].id;
            if (i % 5 == 4)
                part.partOf = m_parts[static_cast<std::size_t>(below(i))].id;
            PartMove first;
            first.id = Id<PartMove>(id());
            first.part = part.id;
            first.to = part.state;
            first.on = QDate(2025, 6, 1);
            m_moves.push_back(first);
            for (int n = 0; n < 3; ++n) {
                Rating rating;
                rating.id = Id<Rating>(id());
                rating.part = part.id;
                rating.position = n;
                rating.quantity = n == 0   ? RatedQuantity::Voltage
                                  : n == 1 ? RatedQuantity::Current
                                           : RatedQuantity::Mass;
                rating.kind = n == 2 ? RatingKind::Actual : RatingKind::Limit;
                rating.basis = n == 2 ? RatingBasis::Nominal : RatingBasis::Continuous;
                if (n < 2)
                    rating.current = CurrentKind::Dc;
                rating.value = Amount(1 + below(500), *Unit::fromSymbol(n == 0   ? u"V"
                                                                        : n == 1 ? u"A"
                                                                                 : u"kg"));
                rating.evidence = static_cast<Evidence>(below(7));
                m_ratings.push_back(rating);
            }
            if (i % 6 == 0) {
                Connection c;
                c.id = Id<Connection>(id());
                c.part = part.id;
                c.circuit = m_circuit;
                m_connections.push_back(c);
            }
            m_parts.push_back(part);
        }
    }

    void makeTasks()
    {
        for (int i = 0; i < m_size.tasks; ++i) {
            Task task;
            task.id = Id<Task>(id());
            // zero-padded, so that key order is the order of making
            task.key = QStringLiteral("task-%1").arg(i, 6, 10, QLatin1Char('0'));
            task.title = QStringLiteral("Fit %1").arg(QString::fromLatin1(kNouns[below(12)]));
            task.area = QString::fromLatin1(kAreas[below(10)]);
            task.milestone = i % 25 == 24;
            task.workMinutes = 30 + below(600);
            if (i < m_size.tasks / 2) {
                task.state = TaskState::Done;
                task.doneOn = QDate(2026, 1, 1);
            }
            if (task.milestone)
                task.targetOn = QDate(2027, 1, 1).addDays(i);
            int position = 0;
            const auto need = [&](NeedKind kind) {
                TaskNeed n;
                n.id = Id<TaskNeed>(id());
                n.task = task.id;
                n.kind = kind;
                n.position = position++;
                return n;
            };
            std::set<int> before;
            for (int n = 0; n < std::min(i, 3); ++n)
                before.insert(i - 1 - below(std::min(i, 20)));
            for (const int b : before) {
                TaskNeed wait = need(NeedKind::Task);
                wait.after = m_tasks[static_cast<std::size_t>(b)].id;
                m_needs.push_back(wait);
            }
            for (int n = 0; n < 2; ++n) {
                TaskNeed wants = need(NeedKind::Part);
                wants.part = m_parts[static_cast<std::size_t>(below(m_size.parts))].id;
                m_needs.push_back(wants);
            }
            m_tasks.push_back(task);
        }
    }

    void fill()
    {
        m_records.all<Seller>().assign(m_sellers);
        m_records.all<BudgetLine>().assign(m_lines);
        m_records.all<Purchase>().assign(m_purchases);
        m_records.all<PurchaseItem>().assign(m_items);
        m_records.all<Part>().assign(m_parts);
        m_records.all<PartMove>().assign(m_moves);
        m_records.all<Rating>().assign(m_ratings);
        m_records.all<Connection>().assign(m_connections);
        m_records.all<Task>().assign(m_tasks);
        m_records.all<TaskNeed>().assign(m_needs);
    }

    Size m_size;
    std::mt19937 m_random{42};
    std::int64_t m_id = 100;
    Records m_records;
    Id<Circuit> m_circuit;
    std::vector<Seller> m_sellers;
    std::vector<BudgetLine> m_lines;
    std::vector<Purchase> m_purchases;
    std::vector<PurchaseItem> m_items;
    std::vector<Part> m_parts;
    std::vector<PartMove> m_moves;
    std::vector<Rating> m_ratings;
    std::vector<Connection> m_connections;
    std::vector<Task> m_tasks;
    std::vector<TaskNeed> m_needs;
};

} // namespace

Records makeRecords(Size size)
{
    return Maker(size).run();
}

void writeBook(const QString &path, Size size)
{
    QFile::remove(path);
    const FixedClock clock;
    auto book = Book::create(path, QStringLiteral("Bench"), Currency(), clock);
    const Records records = makeRecords(size);
    const Outcome done =
        book ? (*book)->edit(QStringLiteral("Fill"), [&] { return (*book)->replaceAll(records); })
             : Outcome(fail(book.error()));
    if (!done) {
        qFatal("bench book: %s", qPrintable(done.error().sentence));
    }
}

} // namespace ohmwright::bench
