// SPDX-License-Identifier: GPL-3.0-or-later
// What the page gives its chart from the book, and the chart through the printer.
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/build_order/build_order_page.h"
#include "ui/build_order/loom_sheet.h"
#include "ui/build_order/loom_view.h"

#include <QPrinter>
#include <QRegularExpression>
#include <QSignalSpy>
#include <QTemporaryDir>

#include <gtest/gtest.h>

using namespace ohmwright;
using namespace ohmwright::ui;
using namespace ohmwright::ui::driving;

namespace {

class TheChartOfThePage : public testing::Test
{
protected:
    Id<Task> add(const QString &title, const QString &area, Id<Task> before = {})
    {
        Task task = namedTask(title);
        task.area = area;
        const Id<Task> made = book.add(task);
        if (before.isSet()) {
            TaskNeed link;
            link.task = made;
            link.kind = NeedKind::Task;
            link.after = before;
            book.add(link);
        }
        return made;
    }
    void open()
    {
        page = std::make_unique<BuildOrderPage>(*book, themed.theme);
        page->resize(1140, 740);
        showActive(*page);
    }

    Themed themed;
    TestBook book;
    std::unique_ptr<BuildOrderPage> page;
};

// Through the printer as into a file: on as many sheets as legible letters take.
TEST_F(TheChartOfThePage, isPrintedOnAsManySheetsAsReadingTakes)
{
    Id<Task> before = add(QStringLiteral("Van in the garage"), QStringLiteral("papers"));
    for (int at = 0; at < 360; ++at) {
        const Id<Task> made = add(QStringLiteral("Bracket of the %1th kind").arg(at),
                                  QStringLiteral("area %1").arg(at % 8), before);
        before = at % 8 == 7 ? made : before;
    }
    open();
    const QSignalSpy said(page.get(), &BuildOrderPage::said);
    const QTemporaryDir folder;
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(folder.filePath(QStringLiteral("p.pdf")));
    printer.setPageSize(QPageSize(QPageSize::A4));
    printer.setPageOrientation(QPageLayout::Landscape);
    page->printOn(printer, QStringLiteral("the one in the shed"));
    ASSERT_EQ(said.count(), 1);
    const QString words = said.at(0).at(0).toString();
    static const QRegularExpression told(
        QStringLiteral("the one in the shed, (\\d) sheets, letters ([6-9])\\."));
    EXPECT_TRUE(words.contains(told)) << words.toStdString();
    EXPECT_FALSE(words.contains(QStringLiteral("hard to read")));
}

TEST_F(TheChartOfThePage, tellsThatATaskMayFail)
{
    const Id<Task> first = add(QStringLiteral("Folder of papers"), QStringLiteral("papers"));
    const Id<Task> second = add(QStringLiteral("Inspection day"), QStringLiteral("papers"), first);
    open();
    const auto *chart = page->findChild<LoomView *>();
    const auto index = chart->network().find(book.records().find(second)->key);
    ASSERT_TRUE(index);
    EXPECT_FALSE(chart->description(*index).contains(QStringLiteral("may fail")));
    // Nothing else about the build order changes: it is painted anew all the same.
    Task changed = *book.records().find(second);
    changed.failPercent = 30;
    changed.redoFrom = first;
    ASSERT_TRUE(
        book->edit(QStringLiteral("may fail"), [&]() -> Outcome { return book->update(changed); }));
    EXPECT_TRUE(chart->description(*index).endsWith(
        QStringLiteral("; may fail 30\u00A0%, again from Folder of papers")));
    const QStringList lines = chart->loom().tasks[*index].date.lines;
    EXPECT_TRUE(lines.join(QLatin1Char(' ')).startsWith(QStringLiteral("may fail 30\u00A0%,")));
}

} // namespace
