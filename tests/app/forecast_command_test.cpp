// SPDX-License-Identifier: GPL-3.0-or-later
// Dates, days to order by and gains as the command tells them.
#include "tests/app/commands_fixture.h"

namespace ohmwright {
namespace {

TEST_F(CommandsTest, ForecastTellsDatesOrdersAndGainsAndExitTellsWhetherTheyAreKept)
{
    QFile file(at("six.json"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(R"({"format": "ohmwright", "version": 1,
        "build": {"title": "Six", "currency": "EUR", "hours_per_week": 6,
                  "contingency_percent": 0, "saved": "10.00 EUR", "set_aside": "10.00 EUR"},
        "vehicle": {},
        "parts": [{"key": "coupling", "name": "Coupling", "kind": "hardware", "state": "wanted",
            "counted_to": "build", "lead_days": 14, "least_lead_days": 14, "most_lead_days": 14,
            "estimate": "180.00 EUR",
            "moves": [{"to_state": "wanted", "moved_on": "2026-06-01"}]}],
        "working_times": [
            {"key": "tue", "weekday": "tuesday", "minutes": 120, "hands": 1},
            {"key": "thu", "weekday": "thursday", "minutes": 120, "hands": 1},
            {"key": "sat", "weekday": "saturday", "minutes": 300, "hands": 2}],
        "choices": [{"key": "joint", "question": "Glue or rivets", "options": [
            {"key": "glue", "name": "Glue"}, {"key": "rivets", "name": "Rivets"}]}],
        "tasks": [
            {"key": "strip", "title": "Strip", "milestone": false, "high_voltage": false,
             "work_minutes": 240, "least_work_minutes": 240, "most_work_minutes": 240,
             "wait_days": 0, "state": "open"},
            {"key": "fit", "title": "Fit", "milestone": false, "high_voltage": false,
             "work_minutes": 120, "least_work_minutes": 120, "most_work_minutes": 120,
             "wait_days": 0, "state": "open", "needs": [{"kind": "task", "after": "strip"},
                                                        {"kind": "part", "part": "coupling"}]},
            {"key": "rolling", "title": "Rolling", "milestone": true, "high_voltage": false,
             "work_minutes": 0, "wait_days": 0, "state": "open", "target_on": "2026-06-29",
             "needs": [{"kind": "task", "after": "fit"}]}]})");
    file.close();
    ASSERT_EQ(run({"load", book(), at("six.json")}), 0) << err.toStdString();
    const QByteArray before = contentOf(book());
    EXPECT_EQ(run({"forecast", book(), "--samples", "200", "--json"}), 1) << err.toStdString();
    QString at80;
    for (const auto &value : json().value("activities").toArray())
        if (value.toObject().value("key").toString() == QStringLiteral("rolling"))
            at80 = value.toObject().value("at_80").toString();
    EXPECT_EQ(at80, QStringLiteral("2026-06-30")); // there on Monday 29, fitted on Tuesday
    const QJsonObject order = json().value("order_by").toArray().at(0).toObject();
    EXPECT_EQ(order.value("part").toString(), QStringLiteral("coupling"));
    EXPECT_EQ(order.value("order_by").toString(), QStringLiteral("2026-06-16"));
    EXPECT_EQ(json().value("money_runs_out").toString(), QStringLiteral("2026-06"));
    const QString first = out;
    run({"forecast", book(), "--samples", "200", "--seed", "1", "--json"});
    EXPECT_EQ(out, first) << "the same seed";
    EXPECT_EQ(run({"forecast", book(), "--samples", "200"}), 1);
    EXPECT_THAT(out.toStdString(), HasSubstr("late at 80"));
    EXPECT_EQ(run({"forecast", book(), "--samples", "200", "--try", "drop:strip", "--json"}), 2);
    EXPECT_THAT(err.toStdString(), HasSubstr("waits on it"));
    // fitted on Monday, when the coupling comes, not on Tuesday
    EXPECT_EQ(
        run({"forecast", book(), "--samples", "200", "--try", "evening:monday+120", "--json"}), 0)
        << err.toStdString();
    EXPECT_EQ(json().value("change").toString(), QStringLiteral("evening:monday+120"));
    EXPECT_EQ(json().value("days_gained").toDouble(), 1);
    EXPECT_EQ(json().value("mean_days_gained").toDouble(), 1);
    EXPECT_EQ(json().value("milestones").toArray().size(), 1);
    EXPECT_EQ(run({"forecast", book(), "--samples", "200", "--try", "evening:monday+120"}), 0);
    EXPECT_THAT(out.toStdString(), HasSubstr("Monday evenings"));
    for (const char *nonsense :
         {"evening:monday", "evening:monday+0", "evening:monday+1441", "evening:noday+60",
          "evening:+60", "paint it", "", "drop:rolling"}) {
        EXPECT_EQ(run({"forecast", book(), "--try", nonsense}), 2) << nonsense;
        EXPECT_THAT(err.toStdString(), HasSubstr(".")) << nonsense;
    }
    EXPECT_EQ(run({"forecast", book(), "--samples", "ten"}), 2);
    EXPECT_EQ(run({"forecast", book(), "--milestone", "nowhere"}), 2);
    EXPECT_EQ(contentOf(book()), before);

    // of a choice each option's checks are counted, in words and for programs
    EXPECT_EQ(run({"choices", book(), "--json"}), 0) << err.toStdString();
    const QJsonArray ways =
        json().value("choices").toArray().at(0).toObject().value("options").toArray();
    ASSERT_EQ(ways.size(), 2);
    for (const char *verdict : {"fails", "unknown", "tight", "holds"})
        EXPECT_TRUE(ways.at(0).toObject().value(QLatin1String(verdict)).isDouble()) << verdict;
    EXPECT_EQ(run({"choices", book()}), 0);
    EXPECT_THAT(out.toStdString(), HasSubstr("unknown"));
    EXPECT_EQ(contentOf(book()), before);

    EXPECT_EQ(run({"calendar", book(), "--out", at("build.ics")}), 0) << err.toStdString();
    EXPECT_TRUE(contentOf(at("build.ics")).startsWith("BEGIN:VCALENDAR"));
    EXPECT_EQ(run({"calendar", book()}), 2);
    EXPECT_EQ(run({"calendar", book(), "--out", at("no/such/folder/build.ics")}), 2);
}

// `qpdf --check` and pdftotext are the outside readers.

} // namespace
} // namespace ohmwright
