// SPDX-License-Identifier: GPL-3.0-or-later
// The one-line diagram in the window: drawn, spoken, saved, and current after an edit.
#include "tests/support/demo_book.h"
#include "tests/support/fake_outside.h"
#include "tests/support/test_book.h"
#include "tests/ui/driving.h"
#include "ui/checks/one_line_view.h"

#include <QFile>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalSpy>
#include <QTemporaryDir>

namespace ohmwright::ui {
namespace {

class TheDiagram : public testing::Test
{
protected:
    void load()
    {
        OHMWRIGHT_ASSERT_OK(
            book->edit(QStringLiteral("load"), [&] { return book->replaceAll(demoRecords()); }));
    }
    void open()
    {
        view = std::make_unique<OneLineView>(*book, themed.theme, outside);
        view->resize(1100, 700);
        driving::showActive(*view);
    }

    driving::Themed themed;
    TestBook book;
    FakeOutside outside;
    std::unique_ptr<OneLineView> view;
};

TEST_F(TheDiagram, TeachesWhileThereIsNoTractionCircuit)
{
    open();
    EXPECT_TRUE(view->line().svg.isEmpty());
    EXPECT_FALSE(view->findChild<QPushButton *>()->isEnabled());
}

TEST_F(TheDiagram, IsSpokenAndFollowsTheBook)
{
    load();
    open();
    auto *scroll = view->findChild<QScrollArea *>();
    EXPECT_TRUE(scroll->accessibleDescription().contains(QStringLiteral("feeds Inverter")));
    OHMWRIGHT_ASSERT_OK(book->edit(QStringLiteral("Rename"), [&]() -> Outcome {
        Part inverter = *book.records().byKey<Part>(QStringLiteral("inverter"));
        inverter.name = QStringLiteral("Other inverter");
        return book->update(inverter);
    }));
    EXPECT_TRUE(scroll->accessibleDescription().contains(QStringLiteral("feeds Other inverter")));
}

TEST_F(TheDiagram, IsSavedInTheColoursOfPaper)
{
    load();
    open();
    themed.theme.setShade(Shade::Dark);
    QTemporaryDir folder;
    outside.saveTo = folder.filePath(QStringLiteral("line.svg"));
    QSignalSpy said(view.get(), &OneLineView::said);
    view->findChild<QPushButton *>()->click();
    EXPECT_EQ(said.count(), 1);
    QFile file(outside.saveTo);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray svg = file.readAll();
    EXPECT_TRUE(svg.startsWith("<svg"));
    EXPECT_TRUE(svg.contains(DiagramColours().ink.toUtf8()));
    outside.saveTo = folder.filePath(QStringLiteral("missing/line.svg"));
    view->findChild<QPushButton *>()->click();
    EXPECT_EQ(said.count(), 2);
    EXPECT_EQ(said.back().at(1).value<Tone>(), Tone::Problem);
}

} // namespace
} // namespace ohmwright::ui
