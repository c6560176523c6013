// SPDX-License-Identifier: GPL-3.0-or-later
// The headless commands, run as a script would: what they print, how they exit, what they leave.
#include "core/book/book.h"
#include "core/parts/consistency.h"
#include "tests/app/commands_fixture.h"

#include <QProcess>

namespace ohmwright {
namespace {

TEST_F(CommandsTest, CreateMakesABookThatVerifies)
{
    EXPECT_EQ(run({"create", book(), "--title", "Green van", "--currency", "GBP"}), 0)
        << err.toStdString();
    EXPECT_EQ(run({"verify", book()}), 0) << out.toStdString();
    EXPECT_EQ(run({"create", book()}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("already a file"));
}

TEST_F(CommandsTest, CreateBeginsABookFromAStarterAndItsAnswers)
{
    ASSERT_EQ(run({"create", book(), "--starter", "gearbox", "--answer", "charging=dc", "--answer",
                   "pack=two", "--json"}),
              0)
        << err.toStdString();
    EXPECT_EQ(json().value("starter").toString(), "gearbox");
    EXPECT_GE(json().value("tasks").toInt(), 80);
    EXPECT_EQ(run({"verify", book()}), 0) << out.toStdString();
    {
        const auto opened = Book::open(book(), clock);
        ASSERT_TRUE(opened.has_value());
        EXPECT_NE((*opened)->records().byKey<Task>(QStringLiteral("second-link")), nullptr);
        EXPECT_TRUE((*opened)->records().build().note.contains(
            QLatin1String("Loose modules in two boxes")));
        EXPECT_FALSE((*opened)->undoText().has_value()) << "an undo would leave an empty book";
    }
    EXPECT_EQ(run({"holdups", book()}), 1);
    EXPECT_THAT(out.toStdString(), HasSubstr("Route agreed"));
    EXPECT_THAT(out.toStdString(), HasSubstr("Ask the authority"));
    ASSERT_EQ(run({"dump", book(), at("a.json")}), 0) << err.toStdString();
    ASSERT_EQ(run({"load", at("again.ohmwright"), at("a.json")}), 0) << err.toStdString();
    ASSERT_EQ(run({"dump", at("again.ohmwright"), at("b.json")}), 0);
    EXPECT_EQ(contentOf(at("a.json")), contentOf(at("b.json")));
}

TEST_F(CommandsTest, CreateNamesTheChoicesAndLeavesNoFile)
{
    const std::vector<std::pair<QStringList, const char *>> wrong = {
        {{"--starter", "rocket"}, "There are: gearbox, unit, axle"},
        {{"--starter", "unit", "--answer", "colour=red"}, "It asks: axle, approval"},
        {{"--starter", "unit", "--answer", "charging=solar"}, "There are: outlet, ac, dc"},
        {{"--starter", "unit", "--answer", "charging"}, "QUESTION=ANSWER"},
        {{"--starter", "unit", "--answer", "axle=rear", "--answer", "axle=front"}, "twice"},
        {{"--answer", "charging=dc"}, "gearbox, unit, axle"},
        {{"--starters"}, "takes no book"},
    };
    for (const auto &[options, choices] : wrong) {
        EXPECT_EQ(run(QStringList{"create", book()} + options), 2)
            << options.join(u' ').toStdString();
        EXPECT_THAT(err.toStdString(), HasSubstr(choices));
        EXPECT_EQ(err.count(u'\n'), 1) << err.toStdString();
        EXPECT_FALSE(QFile::exists(book()));
    }
}

TEST_F(CommandsTest, CreateListsTheStartersWithTheirQuestions)
{
    EXPECT_EQ(run({"create", "--starters"}), 0) << err.toStdString();
    for (const char *line : {"gearbox: ", "unit: ", "axle: ", "charging=dc: ", "(usual)"})
        EXPECT_THAT(out.toStdString(), HasSubstr(line));
    EXPECT_EQ(run({"create", "--starters", "--json"}), 0);
    const QJsonArray all = json().value("starters").toArray();
    ASSERT_EQ(all.size(), 3);
    for (const auto &starter : all)
        EXPECT_EQ(starter.toObject().value("questions").toArray().size(), 6);
}

TEST_F(CommandsTest, BadUseIsOneSentenceAndExit2)
{
    EXPECT_EQ(run({"fly"}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("There is no command"));
    EXPECT_EQ(run({"create"}), 2);
    EXPECT_EQ(run({"create", book(), "--currency", "XYZ"}), 2);
    EXPECT_FALSE(QFile::exists(book()));
    EXPECT_EQ(run({"budget", at("none.ohmwright")}), 2);
    EXPECT_EQ(run({"budget", book(), "--no-such-option"}), 2);
    EXPECT_EQ(run({"sheet", book(), "--out", "x.docx"}), 2);
}

TEST_F(CommandsTest, LogPartWritesAllOfItAndTellsTheOpenQuestions)
{
    ASSERT_EQ(run({"create", book()}), 0);
    EXPECT_EQ(run({"log-part",        book(),
                   "--name",          "Charger 6.6 kW",
                   "--seller",        "Harbour Salvage",
                   "--seller-kind",   "dismantler",
                   "--donor",         "Calder Wren",
                   "--price",         "350 GBP",
                   "--rate",          "1.1725",
                   "--freight",       "25 GBP",
                   "--rating",        "voltage,limit,DC=430 V,nameplate,plate on the lid",
                   "--rating",        "mass=?",
                   "--warranty-days", "90",
                   "--json"}),
              0)
        << err.toStdString();
    EXPECT_EQ(json().value("part").toString(), "charger-6-6-kw");
    const auto opened = Book::open(book(), clock);
    ASSERT_TRUE(opened.has_value());
    EXPECT_EQ((*opened)->records().all<Rating>().size(), 2U);
    EXPECT_EQ((*opened)->records().all<Seller>().rows().front().kind, SellerKind::Dismantler);
    EXPECT_TRUE(findInconsistencies((*opened)->records()).empty());
}

TEST_F(CommandsTest, LogPartRefusesBadInputAndLeavesTheBookUntouched)
{
    ASSERT_EQ(run({"create", book()}), 0);
    const QByteArray before = contentOf(book());
    const QList<QStringList> wrong = {
        {},
        {"--name", "x", "--price", "12 pounds", "--seller", "A"},
        {"--name", "x", "--price", "12 EUR"},
        {"--name", "x", "--price", "12 GBP", "--seller", "A"},
        {"--name", "x", "--rating", "voltage=12 kg"},
        {"--name", "x", "--rating", "colour=red"},
        {"--name", "x", "--circuit", "none"},
        {"--name", "x", "--kind", "spaceship"},
        {"--name", "x", "--date", "yesterweek"},
        {"--name", "x", "--photo", at("no-such.jpg")},
        {"--name", "x", "--warranty-days", "soon"},
        {"--name", "x", "--state", "fitted"},
        {"--name", "x", "--freight", "30 EUR"},
        {"--name", "x", "--tax", "3 EUR"},
        {"--name", "x", "--core", "3 EUR"},
        {"--name", "x", "--count", "3"},
        {"--name", "x", "--rating", "voltage,continuous,DC=450 V for 10 s"},
        {"--name", "x", "--rating", "mass=12 kg for 10 s"},
        {"--name", "x", "--rating", "current,peak,DC=500 A for a while"},
    };
    for (const QStringList &options : wrong) {
        EXPECT_EQ(run(QStringList{"log-part", book()} + options), 2)
            << options.join(u' ').toStdString();
        EXPECT_FALSE(err.isEmpty());
        EXPECT_EQ(err.count(u'\n'), 1) << err.toStdString();
    }
    EXPECT_EQ(contentOf(book()), before);
}

// What an order has already is refused beside it, not dropped; what is the item's own is taken.
TEST_F(CommandsTest, LogPartRefusesCostsBesideAnOrderThatHasThem)
{
    ASSERT_EQ(run({"create", book()}), 0);
    ASSERT_EQ(run({"log-part", book(), "--name", "Motor", "--price", "900 EUR", "--seller", "Yard",
                   "--freight", "60 EUR"}),
              0)
        << err.toStdString();
    QString order;
    {
        const auto opened = Book::open(book(), clock);
        ASSERT_TRUE(opened.has_value());
        order = (*opened)->records().all<Purchase>().rows().front().key;
    }
    const QByteArray before = contentOf(book());
    const QStringList joins{"log-part", book(),    "--name",  "Inverter",
                            "--price",  "400 EUR", "--order", order};
    for (const QStringList &more :
         {QStringList{"--freight", "30 EUR"}, QStringList{"--duty", "30 EUR"},
          QStringList{"--tax", "30 EUR"}, QStringList{"--rate", "1.2"}}) {
        EXPECT_EQ(run(joins + more), 2) << more.front().toStdString();
        EXPECT_THAT(err.toStdString(), HasSubstr("joins an order"));
        EXPECT_EQ(err.count(u'\n'), 1) << err.toStdString();
    }
    EXPECT_EQ(run(joins + QStringList{"--seller", "Harbour"}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("from Yard"));
    EXPECT_EQ(contentOf(book()), before);
    EXPECT_EQ(run(joins + QStringList{"--seller", "yard", "--core", "50 EUR"}), 0)
        << err.toStdString();
}

TEST_F(CommandsTest, LogPartTakesTheDurationOfAPeak)
{
    ASSERT_EQ(run({"create", book()}), 0);
    ASSERT_EQ(run({"log-part", book(), "--name", "Inverter", "--rating",
                   "current,peak,DC=500 A for 10 s,datasheet,page 2", "--rating",
                   "power=80 kW for 30 s,datasheet"}),
              0)
        << err.toStdString();
    const auto opened = Book::open(book(), clock);
    ASSERT_TRUE(opened.has_value());
    const auto &ratings = (*opened)->records().all<Rating>().rows();
    ASSERT_EQ(ratings.size(), 2U);
    EXPECT_EQ(ratings[0].value, amount("500 A"));
    EXPECT_EQ(ratings[0].duration, amount("10 s"));
    EXPECT_EQ(ratings[0].source, QStringLiteral("page 2"));
    EXPECT_EQ(ratings[1].basis, RatingBasis::Peak) << "what lasts some time only is a peak";
    EXPECT_EQ(ratings[1].duration, amount("30 s"));
}

// Two relays of one make, told apart by a suffix.
TEST_F(CommandsTest, CompareSetsTypesAndPartsSideBySide)
{
    {
        TestBook made(book());
        PartType type;
        type.key = QStringLiteral("ardenholt-rk-60");
        type.make = QStringLiteral("Ardenholt");
        type.partNumber = QStringLiteral("RK-60");
        type.name = QStringLiteral("Relay with blow-out");
        Rating rating;
        rating.type = made.add(type);
        rating.current = CurrentKind::Dc;
        rating.value = amount("600 V");
        rating.evidence = Evidence::Datasheet;
        rating.source = QStringLiteral("relay list, p. 28");
        made.add(rating);
    }
    ASSERT_EQ(
        run({"log-part", book(), "--name", "Old relay", "--price", "12 EUR", "--seller", "Yard",
             "--rating", "voltage,limit,DC=400 V,nameplate", "--rating", "mass=0.1 kg,measured"}),
        0)
        << err.toStdString();
    EXPECT_EQ(run({"compare", book(), "old-relay", "ardenholt-rk-60"}), 0) << err.toStdString();
    for (const char *line :
         {"DC voltage limit: differs", "400\u00a0V", "datasheet, relay list, p. 28",
          "mass: not known", "landed cost: not known", "1 differ, "})
        EXPECT_THAT(out.toStdString(), HasSubstr(line));
    EXPECT_EQ(run({"compare", book(), "old-relay", "ardenholt-rk-60", "--json"}), 0);
    const QJsonObject voltage = json().value("rows").toArray().first().toObject();
    EXPECT_EQ(voltage.value("agreement").toString(), "differs");
    EXPECT_EQ(voltage.value("quantity").toString(), "voltage");
    EXPECT_EQ(voltage.value("current").toString(), "DC");
    const QJsonArray cells = voltage.value("cells").toArray();
    ASSERT_EQ(cells.size(), 2);
    EXPECT_EQ(cells[1].toObject().value("value").toString(), "600 V");
    EXPECT_EQ(cells[1].toObject().value("evidence").toString(), "datasheet");
    EXPECT_EQ(json().value("units").toArray()[1].toObject().value("table").toString(), "type");

    const QByteArray before = contentOf(book());
    for (const QStringList &wrong :
         {QStringList{}, QStringList{book()}, QStringList{book(), "old-relay"},
          QStringList{book(), "old-relay", "no-such"},
          QStringList{book(), "old-relay", "old-relay"},
          QStringList{at("none.ohmwright"), "a", "b"}}) {
        EXPECT_EQ(run(QStringList{"compare"} + wrong), 2) << wrong.join(u' ').toStdString();
        EXPECT_EQ(err.count(u'\n'), 1) << err.toStdString();
        EXPECT_TRUE(out.isEmpty());
    }
    EXPECT_EQ(contentOf(book()), before);
}

TEST_F(CommandsTest, DumpAndLoadGiveTheSameBytes)
{
    ASSERT_EQ(run({"create", book()}), 0);
    ASSERT_EQ(
        run({"log-part", book(), "--name", "Motor", "--price", "900 EUR", "--seller", "Yard"}), 0);
    ASSERT_EQ(run({"dump", book(), at("a.json")}), 0) << err.toStdString();
    ASSERT_EQ(run({"load", at("again.ohmwright"), at("a.json")}), 0) << err.toStdString();
    ASSERT_EQ(run({"dump", at("again.ohmwright"), at("b.json")}), 0);
    EXPECT_EQ(contentOf(at("a.json")), contentOf(at("b.json")));
    EXPECT_FALSE(contentOf(at("a.json")).isEmpty());
}

TEST_F(CommandsTest, LoadOfNonsenseLeavesNoBook)
{
    QFile file(at("bad.json"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{\"format\": \"ohmwright\", \"version\": 1, \"colour\": 3}");
    file.close();
    EXPECT_EQ(run({"load", book(), at("bad.json")}), 2);
    EXPECT_FALSE(err.isEmpty());
    EXPECT_FALSE(QFile::exists(book()));
}

TEST_F(CommandsTest, HoldUpsExitTellsWhetherAnythingHoldsUp)
{
    {
        TestBook made(book());
        const Id<Task> work = made.add(namedTask(QStringLiteral("Build pack")));
        const Id<Task> goal = made.add(namedTask(QStringLiteral("Drives"), true));
        TaskNeed wait;
        wait.task = goal;
        wait.after = work;
        made.add(wait);
        const Id<Part> busbars =
            made.add(namedPart(QStringLiteral("Busbars"), PartState::Wanted, PartKind::Hardware));
        TaskNeed need;
        need.task = work;
        need.kind = NeedKind::Part;
        need.part = busbars;
        made.add(need);
    }
    EXPECT_EQ(run({"holdups", book()}), 1) << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr("Busbars"));
    EXPECT_EQ(run({"holdups", book(), "--milestone", "Drives", "--json"}), 1);
    EXPECT_EQ(json().value("moves").toArray().size(), 1);
    EXPECT_EQ(run({"holdups", book(), "--milestone", "Flies"}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("There are: Drives"));
}

TEST_F(CommandsTest, HoldUpsDoNotCallReachedWhatIsNot)
{
    {
        TestBook made(book());
        Choice unit;
        unit.key = QStringLiteral("unit");
        unit.question = QStringLiteral("Which unit");
        ChoiceOption large;
        large.choice = made.add(unit);
        large.key = large.name = QStringLiteral("large");
        ChoiceOption small = large;
        small.key = small.name = QStringLiteral("small");
        const Id<ChoiceOption> taken = made.add(small);
        Task aside = namedTask(QStringLiteral("Floor cut"), true);
        aside.option = made.add(large);
        made.add(aside);
        Choice decided = *made.records().find(large.choice);
        decided.taken = taken;
        decided.decidedOn = clock.today();
        OHMWRIGHT_ASSERT_OK(made->edit(QStringLiteral("Decide"),
                                       [&]() -> Outcome { return made->update(decided); }));
    }
    ASSERT_EQ(run({"holdups", book(), "--milestone", "Floor cut"}), 0) << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr("Set aside"));
    EXPECT_THAT(out.toStdString(), testing::Not(HasSubstr("Reached.")));
    {
        TestBook made(at("loop.ohmwright"));
        const Id<Task> first = made.add(namedTask(QStringLiteral("Hen")));
        const Id<Task> second = made.add(namedTask(QStringLiteral("Egg"), true));
        for (const auto &[task, after] : {std::pair(first, second), {second, first}}) {
            TaskNeed link;
            link.task = task;
            link.after = after;
            made.add(link);
        }
    }
    EXPECT_EQ(run({"holdups", at("loop.ohmwright")}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("Hen"));
}

TEST_F(CommandsTest, BudgetExitTellsWhetherTheMoneyReaches)
{
    {
        TestBook made(book());
        BudgetLine line;
        line.name = QStringLiteral("Battery");
        line.allowance = euros(10000);
        made.add(line);
    }
    EXPECT_EQ(run({"budget", book()}), 0);
    ASSERT_EQ(run({"log-part", book(), "--name", "Pack", "--price", "500 EUR", "--seller", "Yard"}),
              0);
    EXPECT_EQ(run({"budget", book(), "--json"}), 1);
    EXPECT_EQ(json().value("left").toString(), "-390.00 EUR");
}

// A contactor for 450 V DC on a circuit of 400 V, then of 480 V: ISO 6469-3 wants components rated
// for the greatest working voltage of their circuit.
TEST_F(CommandsTest, TheBookIsSoundToTheSqliteShell)
{
    ASSERT_EQ(run({"create", book()}), 0);
    ASSERT_EQ(
        run({"log-part", book(), "--name", "Motor", "--price", "900 EUR", "--seller", "Yard"}), 0);
    QProcess shell;
    shell.start(
        QStringLiteral("sqlite3"),
        {book(), QStringLiteral(
                     "PRAGMA integrity_check; PRAGMA foreign_key_check; PRAGMA application_id;")});
    ASSERT_TRUE(shell.waitForFinished());
    EXPECT_EQ(shell.readAllStandardOutput().simplified(), "ok " + QByteArray::number(0x4F484D57));
}

TEST_F(CommandsTest, SumsBeyondCountingAreRefusedAndNothingIsLogged)
{
    ASSERT_EQ(run({"create", book()}), 0);
    const QByteArray before = contentOf(book());
    EXPECT_EQ(run({"log-part", book(), "--name", "Motor", "--price", "9999999999999.99 EUR",
                   "--count", "100000", "--seller", "Yard"}),
              2);
    EXPECT_EQ(run({"log-part", book(), "--name", "Motor", "--price", "9999999999.99 USD", "--rate",
                   "99999999999", "--seller", "Yard"}),
              2);
    EXPECT_TRUE(err.contains(QStringLiteral("more than a book can count")));
    EXPECT_EQ(contentOf(book()), before);
    EXPECT_EQ(run({"budget", book()}), 0);
}

TEST_F(CommandsTest, EveryCommandExplainsItself)
{
    for (const auto &command : allCommands()) {
        EXPECT_EQ(run({command->name(), "--help"}), 0);
        EXPECT_THAT(out.toStdString(), HasSubstr("Usage: ohmwright"));
    }
    EXPECT_EQ(run({"help"}), 0);
}

TEST_F(CommandsTest, VerifyOfADamagedBookIsBadNewsAndOfNoBookBadUse)
{
    ASSERT_EQ(run({"create", book()}), 0);
    QFile file(book());
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    const qint64 size = file.size();
    ASSERT_TRUE(file.seek(size / 2));
    file.write(QByteArray(static_cast<qsizetype>(size / 2), '\xAB'));
    file.close();
    EXPECT_EQ(run({"verify", book()}), 1) << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr("damaged"));
    EXPECT_EQ(run({"verify", at("none.ohmwright")}), 2);
    EXPECT_EQ(run({"verify", book(), "more"}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("one book and nothing more"));
    QFile::remove(book()); // of no use to the other checks of test books
}

TEST_F(CommandsTest, HistoryTellsWhatChangedAndUndoTakesItBack)
{
    ASSERT_EQ(run({"create", book()}), 0);
    ASSERT_EQ(run({"log-part", book(), "--name", "Heater", "--rating", "voltage,limit,DC=400 V"}),
              0)
        << err.toStdString();
    ASSERT_EQ(run({"history", book()}), 0) << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr("part “Heater” added"));
    EXPECT_THAT(out.toStdString(), HasSubstr("value: 400 V"));
    ASSERT_EQ(run({"history", book(), "heater", "--json"}), 0);
    EXPECT_EQ(json()["edits"].toArray().size(), 1);
    EXPECT_EQ(run({"history", book(), "pump"}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("has the key “pump”"));
    EXPECT_EQ(run({"history", book(), "--last", "some"}), 2);

    ASSERT_EQ(run({"undo", book()}), 0) << err.toStdString();
    EXPECT_THAT(out.toStdString(), HasSubstr("Taken back: Log"));
    EXPECT_EQ(run({"undo", book()}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("nothing to undo"));
    ASSERT_EQ(run({"history", book(), "--last", "1"}), 0);
    EXPECT_THAT(out.toStdString(), HasSubstr("(taken back)"));
    ASSERT_EQ(run({"redo", book(), "--json"}), 0);
    EXPECT_TRUE(json()["redone"].toString().startsWith("Log"));
    EXPECT_EQ(run({"redo", book()}), 2);
}

} // namespace
} // namespace ohmwright
