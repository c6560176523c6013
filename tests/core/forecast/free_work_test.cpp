// SPDX-License-Identifier: GPL-3.0-or-later
// What no plan leaves out, and what cannot be ordered today: refused with a sentence, never
// advised.
#include "core/forecast/free_work.h"
#include "core/forecast/gains.h"
#include "tests/core/forecast/six_tasks.h"

namespace ohmwright::forecast {
namespace {

class FreeWork : public testing::Test
{
protected:
    FreeWork() { m_shelf = m_six.add("shelf", 600, {}); }
    const Records &records() const { return m_six.book.records(); }
    QString kept(Id<ohmwright::Task> task) const
    {
        return whyKept(records(), *records().find(task), waitedOnBy(records()));
    }
    QString refusal(const char *text) const
    {
        const Result<PlanChange> change = parsePlanChange(QLatin1String(text), records());
        return change ? QString() : change.error().sentence;
    }
    void expectKeptWith(const std::function<void(ohmwright::Task &)> &how)
    {
        const ohmwright::Task was = *records().find(m_shelf);
        m_six.change<ohmwright::Task>(m_shelf, how);
        EXPECT_TRUE(kept(m_shelf).startsWith(QStringLiteral("No plan leaves out “shelf”: it ")));
        EXPECT_EQ(refusal("drop:shelf"), kept(m_shelf));
        m_six.change<ohmwright::Task>(m_shelf, [&](ohmwright::Task &t) { t = was; });
        EXPECT_EQ(kept(m_shelf), QString());
    }
    // Puts a need to the shelf, and takes it away again.
    void expectKeptByNeed(TaskNeed need)
    {
        need.task = m_shelf;
        const Id<TaskNeed> id = m_six.book.add(need);
        EXPECT_NE(kept(m_shelf), QString()) << wordOf(need.kind).toStdString();
        OHMWRIGHT_ASSERT_OK(
            m_six.book->edit(QStringLiteral("off"), [&] { return m_six.book->remove(id); }));
        EXPECT_EQ(kept(m_shelf), QString());
    }
    QStringList tried(PlanChange::Kind kind) const
    {
        const WorkPlan plan = workPlanOf(records(), kToday);
        Settings settings;
        settings.samples = 100;
        const Forecast forecast = Simulation(plan, settings).run();
        QStringList keys;
        for (const PlanChange &change :
             worthTrying(records(), plan, forecast, QStringLiteral("rolling")))
            if (change.kind == kind)
                keys << change.key;
        return keys;
    }

    SixTasks m_six;
    Id<ohmwright::Task> m_shelf;
};

TEST_F(FreeWork, IsWhatNothingWaitsOnNotEvenAMilestone)
{
    EXPECT_EQ(kept(m_shelf), QString());
    for (const Id<ohmwright::Task> waited :
         {m_six.strip, m_six.lift, m_six.measure, m_six.glue, m_six.fit})
        EXPECT_TRUE(kept(waited).contains(QStringLiteral("waits on it")))
            << kept(waited).toStdString();
    EXPECT_TRUE(kept(m_six.fit).contains(QStringLiteral("“rolling”")));
    EXPECT_TRUE(kept(m_six.rolling).contains(QStringLiteral("milestone")));
    EXPECT_EQ(refusal("drop:shelf"), QString());
    EXPECT_EQ(refusal("drop:glue"), kept(m_six.glue));

    // the book says that it can do without, by the link that is taken away
    for (const TaskNeed &need : std::vector(records().all<TaskNeed>().rows()))
        if (need.after == m_six.glue) {
            OHMWRIGHT_ASSERT_OK(m_six.book->edit(QStringLiteral("unlink"),
                                                 [&] { return m_six.book->remove(need.id); }));
        }
    EXPECT_EQ(kept(m_six.glue), QString());
}

TEST_F(FreeWork, IsNothingThatMayProtectPeopleOrSendsForSomething)
{
    expectKeptWith([](ohmwright::Task &t) { t.highVoltage = true; });
    expectKeptWith([](ohmwright::Task &t) { t.trade = Trade::Testing; });
    expectKeptWith([](ohmwright::Task &t) { t.trade = Trade::Paperwork; });
    expectKeptWith([](ohmwright::Task &t) { t.failPercent = 10; });
    expectKeptWith([&](ohmwright::Task &t) { t.buys = m_six.coupling; });
    Letter letter;
    letter.subject = QStringLiteral("Shelf");
    const Id<Letter> asked = m_six.book.add(letter);
    expectKeptWith([&](ohmwright::Task &t) { t.asks = asked; });
    expectKeptWith([&](ohmwright::Task &t) { t.opens = m_six.coupling; });

    TaskNeed permit;
    permit.kind = NeedKind::Permit;
    permit.what = QStringLiteral("work permit");
    expectKeptByNeed(permit);
    TaskNeed person;
    person.kind = NeedKind::Person;
    person.what = QStringLiteral("second person");
    expectKeptByNeed(person);
    TestRecord test;
    test.name = QStringLiteral("Pull test");
    TaskNeed tested;
    tested.kind = NeedKind::Test;
    tested.test = m_six.book.add(test);
    expectKeptByNeed(tested);
}

TEST_F(FreeWork, IsNothingOfTheSafetySystemsOrOnAHighVoltageCircuit)
{
    Part guard = namedPart(QStringLiteral("Flange guard"));
    TaskNeed need;
    need.kind = NeedKind::Part;
    need.part = m_six.book.add(guard);
    need.task = m_shelf;
    m_six.book.add(need);
    EXPECT_EQ(kept(m_shelf), QString()) << "a part like others";

    Circuit circuit;
    circuit.name = QStringLiteral("12 V");
    circuit.kind = CircuitKind::LowVoltage;
    Connection connection;
    connection.part = *need.part;
    connection.circuit = m_six.book.add(circuit);
    m_six.book.add(connection);
    EXPECT_EQ(kept(m_shelf), QString());
    m_six.change<Circuit>(connection.circuit, [](Circuit &c) { c.kind = CircuitKind::Traction; });
    EXPECT_TRUE(kept(m_shelf).contains(QStringLiteral("high-voltage circuit")));
    m_six.change<Circuit>(connection.circuit, [](Circuit &c) { c.kind = CircuitKind::LowVoltage; });
    EXPECT_EQ(kept(m_shelf), QString());

    SafetySystem system;
    system.name = QStringLiteral("Guard over what turns");
    system.kind = SafetyKind::Other;
    system.part = need.part;
    m_six.book.add(system);
    EXPECT_TRUE(kept(m_shelf).contains(QStringLiteral("safety system")))
        << kept(m_shelf).toStdString();
}

TEST_F(FreeWork, IsAllThatIsEverAdvisedToBeLeftOut)
{
    for (const QString &key : tried(PlanChange::Kind::Drop))
        EXPECT_EQ(key, QStringLiteral("shelf"));
}

TEST_F(FreeWork, APartIsOrderedTodayOnlyIfItsTaskWaitsForNothing)
{
    m_six.change<ohmwright::Task>(m_six.measure,
                                  [&](ohmwright::Task &t) { t.buys = m_six.coupling; });
    EXPECT_EQ(refusal("order:coupling"),
              QStringLiteral("“Coupling” cannot be ordered today: “measure” orders it, and that "
                             "waits for “lift”."));
    EXPECT_TRUE(tried(PlanChange::Kind::Order).isEmpty());

    m_six.change<ohmwright::Task>(m_six.measure, [](ohmwright::Task &t) { t.buys.reset(); });
    m_six.change<ohmwright::Task>(m_six.strip,
                                  [&](ohmwright::Task &t) { t.buys = m_six.coupling; });
    EXPECT_EQ(refusal("order:coupling"), QString());
    EXPECT_EQ(tried(PlanChange::Kind::Order), QStringList{QStringLiteral("coupling")});

    Letter letter;
    letter.subject = QStringLiteral("Drawing of the coupling");
    TaskNeed need;
    need.task = m_six.strip;
    need.kind = NeedKind::Letter;
    need.letter = m_six.book.add(letter);
    m_six.book.add(need);
    EXPECT_TRUE(refusal("order:coupling").contains(letter.subject));
    EXPECT_TRUE(tried(PlanChange::Kind::Order).isEmpty());
}

} // namespace
} // namespace ohmwright::forecast
