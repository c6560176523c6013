// SPDX-License-Identifier: GPL-3.0-or-later
// The Bench's lists: what is left out is a press away, and what only checks ask stands there too.
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/bench/bench_page.h"
#include "ui/bench/bench_rows.h"
#include "ui/forecast/forecaster.h"

#include <QPushButton>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class TheBench : public testing::Test
{
protected:
    TheBench()
    {
        Circuit traction;
        traction.name = QStringLiteral("Traction");
        traction.key = QStringLiteral("traction");
        const Id<Circuit> circuit = book.add(traction);
        for (int i = 1; i <= 9; ++i) {
            Connection on;
            on.part = book.add(namedPart(QStringLiteral("Relay %1").arg(i), PartState::InHand,
                                         PartKind::Hardware));
            on.circuit = circuit;
            book.add(on);
        }
        bench.resize(1100, 900);
        showActive(bench);
    }

    int questions() const
    {
        int count = 0;
        for (const auto *row : bench.findChildren<BenchRowButton *>())
            count += row->accessibleName().contains(QStringLiteral("voltage limit")) ? 1 : 0;
        return count;
    }
    QPushButton *rest()
    {
        return bench.findChild<QPushButton *>(QStringLiteral("rest of open questions"));
    }

    Themed themed;
    TestBook book;
    Forecaster forecaster{*book};
    BenchPage bench{*book, forecaster, themed.theme};
};

TEST_F(TheBench, ShowsTheRestOfAListAtAPressAndFewerAtAnother)
{
    EXPECT_EQ(questions(), 7);
    ASSERT_NE(rest(), nullptr);
    EXPECT_EQ(rest()->accessibleName(), QStringLiteral("Show 2 more: open questions"));
    rest()->setFocus();
    QTest::keyClick(rest(), Qt::Key_Space);
    QTest::qWait(20);
    EXPECT_EQ(questions(), 9);
    QTest::mouseClick(rest(), Qt::LeftButton);
    QTest::qWait(20);
    EXPECT_EQ(questions(), 7);
}

TEST_F(TheBench, TellsWhatOnlyACheckAsks)
{
    Question peak;
    peak.part = book.records().all<Part>().rows().front().id;
    peak.figure = {RatedQuantity::Current, RatingKind::Limit, RatingBasis::Peak, CurrentKind::Ac};
    peak.askedBy << QStringLiteral("check Phases");
    bench.setAskedByChecks({peak});
    QTest::qWait(20);
    const auto rows = bench.findChildren<BenchRowButton *>();
    EXPECT_TRUE(std::any_of(rows.begin(), rows.end(), [](const BenchRowButton *row) {
        return row->accessibleDescription() == QStringLiteral("asked by check Phases");
    }));
}

} // namespace
