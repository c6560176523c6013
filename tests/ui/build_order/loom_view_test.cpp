// SPDX-License-Identifier: GPL-3.0-or-later
// Long, since every key and gesture has its case on one small network.
#include "tests/core/plan/loom_networks.h"
#include "ui/build_order/loom_legend.h"
#include "ui/build_order/loom_view.h"

#include <QAccessible>
#include <QAccessibleActionInterface>
#include <QApplication>
#include <QHelpEvent>
#include <QImage>
#include <QKeyEvent>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>
#include <QToolTip>
#include <QWheelEvent>

#include <gtest/gtest.h>

#include <algorithm>
#include <memory>
#include <set>
#include <utility>
#include <vector>

namespace ohmwright::ui {

namespace {

using plan::LeafNeed;
using plan::Network;
using plan::Task;

Task task(const char *key, const char *title, const char *area, std::vector<std::size_t> after = {})
{
    Task made;
    made.key = QLatin1String(key);
    made.title = QLatin1String(title);
    made.area = QLatin1String(area);
    made.after = std::move(after);
    return made;
}

// Two branches: a1 - a2 - a3, and b1 - b2 where b2 also waits on a1.
Network smallNetwork()
{
    Network network{{task("a1", "Drain tank", "old drivetrain"),
                     task("a2", "Engine out", "old drivetrain", {0}),
                     task("a3", "Sell <engine>", "old drivetrain", {1}),
                     task("b1", "Measure bell face", "motor"),
                     task("b2", "Coupling machined", "motor", {3, 0})}};
    network.tasks[0].done = true;
    LeafNeed blank;
    blank.key = "n1";
    blank.subject = "p1";
    blank.subjectName = "coupling blank";
    blank.reason = "no offer taken yet";
    network.tasks[4].needs = {blank};
    return network;
}

class LoomViewTest : public testing::Test
{
protected:
    void SetUp() override { show(smallNetwork()); }

    void show(const Network &network, QSize size = {1100, 500})
    {
        m_view = std::make_unique<LoomView>();
        m_view->resize(size);
        m_view->setNetwork(network, {});
        m_view->show();
        m_view->activateWindow();
        m_view->setFocus();
        QApplication::processEvents();
    }
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier)
    {
        QTest::keyClick(m_view.get(), key, with);
    }
    [[nodiscard]] QString current() const { return m_view->currentTask(); }
    [[nodiscard]] std::size_t indexOf(const char *key) const
    {
        return std::find_if(m_view->loom().tasks.begin(), m_view->loom().tasks.end(),
                            [&](const plan::LoomTask &at) {
                                return m_view->network().tasks[at.task].key == QLatin1String(key);
                            })
            ->task;
    }
    [[nodiscard]] QPoint middleOf(const char *key) const
    {
        return m_view->taskRect(indexOf(key)).center();
    }
    [[nodiscard]] QPoint rightEndOf(const char *key) const
    {
        const QRect rect = m_view->taskRect(indexOf(key));
        return {rect.right() + 3, rect.center().y()};
    }
    void click(QPoint at) { QTest::mouseClick(m_view->viewport(), Qt::LeftButton, {}, at); }

    std::unique_ptr<LoomView> m_view;
};

// Keyboard
// -----------------------------------------------------------------------------------------

TEST_F(LoomViewTest, FirstArrowStandsOnTheFirstTaskThatCanStart)
{
    EXPECT_EQ(current(), QString());
    press(Qt::Key_Right);
    EXPECT_EQ(current(), "b1");
}

TEST_F(LoomViewTest, LeftAndRightGoAlongTheBranchAndStopAtItsEnds)
{
    m_view->setCurrentTask("a1");
    press(Qt::Key_Right);
    EXPECT_EQ(current(), "a2");
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    EXPECT_EQ(current(), "a3");
    press(Qt::Key_Home);
    EXPECT_EQ(current(), "a1");
    press(Qt::Key_Left);
    EXPECT_EQ(current(), "a1");
    press(Qt::Key_End);
    EXPECT_EQ(current(), "a3");
}

TEST_F(LoomViewTest, UpAndDownGoToTheNeighbouringBranch)
{
    m_view->setCurrentTask("a1");
    const bool motorBelow =
        m_view->taskRect(indexOf("b1")).top() > m_view->taskRect(indexOf("a1")).top();
    press(motorBelow ? Qt::Key_Down : Qt::Key_Up);
    EXPECT_EQ(current(), "b1");
    press(motorBelow ? Qt::Key_Up : Qt::Key_Down);
    EXPECT_EQ(current(), "a1");
}

TEST_F(LoomViewTest, ControlWithAnArrowGoesAlongAWire)
{
    m_view->setCurrentTask("b2");
    press(Qt::Key_Left, Qt::ControlModifier);
    const QString before = current();
    EXPECT_TRUE(before == "a1" || before == "b1");
    press(Qt::Key_Right, Qt::ControlModifier);
    EXPECT_NE(current(), before);
}

TEST_F(LoomViewTest, EveryTaskOfTheVanIsReachedByArrows)
{
    show(plan::vanNetwork());
    std::set<QString> seen;
    std::vector<QString> open{m_view->network().tasks[0].key};
    while (!open.empty()) {
        const QString at = open.back();
        open.pop_back();
        if (!seen.insert(at).second)
            continue;
        for (const Qt::Key key : {Qt::Key_Left, Qt::Key_Right, Qt::Key_Up, Qt::Key_Down}) {
            m_view->setCurrentTask(at);
            press(key);
            open.push_back(current());
        }
    }
    EXPECT_EQ(seen.size(), m_view->network().tasks.size());
}

TEST_F(LoomViewTest, EnterOpensTheTask)
{
    QSignalSpy opened(m_view.get(), &LoomView::taskActivated);
    press(Qt::Key_Return);
    EXPECT_EQ(opened.size(), 0);
    m_view->setCurrentTask("a2");
    press(Qt::Key_Return);
    ASSERT_EQ(opened.size(), 1);
    EXPECT_EQ(opened[0][0], "a2");
}

TEST_F(LoomViewTest, NAsksForATaskAfterTheSelectedOneInItsArea)
{
    QSignalSpy added(m_view.get(), &LoomView::addRequested);
    press(Qt::Key_N);
    m_view->setCurrentTask("b1");
    press(Qt::Key_N);
    ASSERT_EQ(added.size(), 2);
    EXPECT_EQ(added[0], (QList<QVariant>{QString(), QString()}));
    EXPECT_EQ(added[1], (QList<QVariant>{"b1", "motor"}));
}

TEST_F(LoomViewTest, DTogglesDone)
{
    QSignalSpy toggled(m_view.get(), &LoomView::doneToggled);
    m_view->setCurrentTask("a2");
    press(Qt::Key_D);
    ASSERT_EQ(toggled.size(), 1);
    EXPECT_EQ(toggled[0][0], "a2");
}

TEST_F(LoomViewTest, LLinksToTheTaskChosenByArrowsAndEnter)
{
    QSignalSpy linked(m_view.get(), &LoomView::linkRequested);
    QSignalSpy opened(m_view.get(), &LoomView::taskActivated);
    m_view->setCurrentTask("a1");
    press(Qt::Key_L);
    EXPECT_TRUE(m_view->isLinking());
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    EXPECT_EQ(current(), "a1");
    press(Qt::Key_Return);
    ASSERT_EQ(linked.size(), 1);
    EXPECT_EQ(linked[0], (QList<QVariant>{"a1", "a3"}));
    EXPECT_FALSE(m_view->isLinking());
    EXPECT_EQ(opened.size(), 0);
}

TEST_F(LoomViewTest, LLinksToTheTaskClicked)
{
    QSignalSpy linked(m_view.get(), &LoomView::linkRequested);
    m_view->setCurrentTask("b1");
    press(Qt::Key_L);
    click(middleOf("a3"));
    ASSERT_EQ(linked.size(), 1);
    EXPECT_EQ(linked[0], (QList<QVariant>{"b1", "a3"}));
}

TEST_F(LoomViewTest, NothingIsLinkedToItself)
{
    QSignalSpy linked(m_view.get(), &LoomView::linkRequested);
    m_view->setCurrentTask("b1");
    press(Qt::Key_L);
    press(Qt::Key_Return);
    EXPECT_EQ(linked.size(), 0);
    EXPECT_TRUE(m_view->isLinking());
}

TEST_F(LoomViewTest, EscapeEndsTheInnermostThingFirst)
{
    m_view->setCurrentTask("a1");
    press(Qt::Key_F);
    press(Qt::Key_W);
    press(Qt::Key_L);
    EXPECT_TRUE(m_view->isLinking());
    press(Qt::Key_Escape);
    EXPECT_FALSE(m_view->isLinking());
    EXPECT_TRUE(m_view->isFollowing());
    press(Qt::Key_Escape);
    EXPECT_FALSE(m_view->isFollowing());
    EXPECT_EQ(current(), "a1");
    press(Qt::Key_Escape);
    EXPECT_EQ(current(), QString());
}

TEST_F(LoomViewTest, WGoesRoundTheWiresAndDeleteUnlinks)
{
    QSignalSpy unlinked(m_view.get(), &LoomView::unlinkRequested);
    m_view->setCurrentTask("a2");
    press(Qt::Key_Delete);
    EXPECT_EQ(unlinked.size(), 0);
    press(Qt::Key_W);
    press(Qt::Key_Delete);
    press(Qt::Key_W);
    press(Qt::Key_Delete);
    press(Qt::Key_W);
    press(Qt::Key_Delete);
    ASSERT_EQ(unlinked.size(), 3);
    EXPECT_EQ(unlinked[0], (QList<QVariant>{"a1", "a2"}));
    EXPECT_EQ(unlinked[1], (QList<QVariant>{"a2", "a3"}));
    EXPECT_EQ(unlinked[2], unlinked[0]);
}

TEST_F(LoomViewTest, EnterOnAWireGoesToItsOtherEnd)
{
    m_view->setCurrentTask("a2");
    press(Qt::Key_W);
    press(Qt::Key_Return);
    EXPECT_EQ(current(), "a1");
    EXPECT_FALSE(m_view->currentWire());
}

TEST_F(LoomViewTest, FDimsAllThatIsNotOnTheChain)
{
    m_view->setCurrentTask("b1");
    const QRect other = m_view->taskRect(indexOf("a2"));
    const QImage before = m_view->viewport()->grab(other).toImage();
    press(Qt::Key_F);
    EXPECT_TRUE(m_view->isFollowing());
    EXPECT_NE(m_view->viewport()->grab(other).toImage(), before);
    press(Qt::Key_F);
    EXPECT_FALSE(m_view->isFollowing());
    EXPECT_EQ(m_view->viewport()->grab(other).toImage(), before);
}

TEST_F(LoomViewTest, LetterKeysAreNotTakenByTheWindowsShortcuts)
{
    for (const Qt::Key key : {Qt::Key_N, Qt::Key_L, Qt::Key_D, Qt::Key_F, Qt::Key_Delete}) {
        QKeyEvent event(QEvent::ShortcutOverride, key, Qt::NoModifier);
        event.ignore();
        QApplication::sendEvent(m_view.get(), &event);
        EXPECT_TRUE(event.isAccepted());
    }
    QKeyEvent withControl(QEvent::ShortcutOverride, Qt::Key_F, Qt::ControlModifier);
    withControl.ignore();
    QApplication::sendEvent(m_view.get(), &withControl);
    EXPECT_FALSE(withControl.isAccepted());
}

// Zoom and place
// -----------------------------------------------------------------------------------

TEST_F(LoomViewTest, KeysZoom)
{
    show(plan::vanNetwork());
    const double fitted = m_view->zoom();
    EXPECT_LT(fitted, 1);
    press(Qt::Key_Plus);
    EXPECT_GT(m_view->zoom(), fitted);
    press(Qt::Key_1);
    EXPECT_EQ(m_view->zoom(), 1);
    press(Qt::Key_Minus);
    EXPECT_LT(m_view->zoom(), 1);
    press(Qt::Key_0);
    EXPECT_NEAR(m_view->zoom(), fitted, 1e-9);
    EXPECT_EQ(m_view->horizontalScrollBar()->maximum(), 0);
}

TEST_F(LoomViewTest, ZoomsInToTwiceTheLetters)
{
    for (int times = 0; times < 30; ++times)
        press(Qt::Key_Plus);
    EXPECT_DOUBLE_EQ(m_view->zoom(), 2);
}

TEST_F(LoomViewTest, TheWholeIsInSightWithoutScrollBarsAtEverySize)
{
    const Network van = plan::vanNetwork();
    show(van);
    m_view->setNetwork(van, plan::inventedForecast(van));
    for (const plan::LoomBy by : {plan::LoomBy::Chain, plan::LoomBy::Date}) {
        m_view->setBy(by);
        for (const QSize size :
             {QSize(1066, 360), QSize(500, 700), QSize(1801, 901), QSize(733, 333)}) {
            m_view->setZoom(1.5); // with scroll bars
            m_view->resize(size);
            QApplication::processEvents();
            press(Qt::Key_0);
            QApplication::processEvents();
            EXPECT_EQ(m_view->horizontalScrollBar()->maximum(), 0) << size.width();
            EXPECT_EQ(m_view->verticalScrollBar()->maximum(), 0) << size.width();
            EXPECT_FALSE(m_view->verticalScrollBar()->isVisible());
            const QRect all = m_view->viewport()->rect().adjusted(-1, -1, 1, 1);
            for (const plan::LoomTask &at : m_view->loom().tasks)
                EXPECT_TRUE(all.contains(m_view->taskRect(at.task)));
        }
    }
}

TEST_F(LoomViewTest, FitsAnewWhenTheWindowGrows)
{
    show(plan::vanNetwork(), {600, 400});
    const double small = m_view->zoom();
    m_view->resize(1200, 800);
    QApplication::processEvents();
    EXPECT_GT(m_view->zoom(), small);
    m_view->setZoom(1);
    m_view->resize(700, 500);
    QApplication::processEvents();
    EXPECT_EQ(m_view->zoom(), 1);
}

TEST_F(LoomViewTest, ControlAndWheelZoomAboutThePointer)
{
    show(plan::vanNetwork());
    m_view->setCurrentTask("mg13");
    m_view->resetZoom();
    const QPoint at = middleOf("mg13");
    QWheelEvent wheel(at, m_view->viewport()->mapToGlobal(at), {}, {0, 120}, Qt::NoButton,
                      Qt::ControlModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(m_view->viewport(), &wheel);
    EXPECT_NEAR(m_view->zoom(), 1.2, 1e-9);
    EXPECT_LE((middleOf("mg13") - at).manhattanLength(), 4);
}

TEST_F(LoomViewTest, ScrollsToWhatIsSelected)
{
    show(plan::vanNetwork());
    m_view->resetZoom();
    for (const char *key : {"od01", "zz06", "bo01", "ch12"}) {
        m_view->setCurrentTask(key);
        EXPECT_TRUE(m_view->viewport()->rect().contains(m_view->taskRect(indexOf(key)))) << key;
    }
}

TEST_F(LoomViewTest, DraggingEmptyGroundPans)
{
    show(plan::vanNetwork());
    m_view->setCurrentTask("mg13");
    m_view->resetZoom();
    const int before = m_view->horizontalScrollBar()->value();
    // Just above the housing there is nothing to grab.
    const QRect rect = m_view->taskRect(indexOf("mg13"));
    const QPoint from(rect.center().x() + 20, rect.top() - 12);
    QTest::mousePress(m_view->viewport(), Qt::LeftButton, {}, from);
    QTest::mouseMove(m_view->viewport(), from + QPoint(-50, 0));
    QTest::mouseRelease(m_view->viewport(), Qt::LeftButton, {}, from + QPoint(-50, 0));
    EXPECT_EQ(m_view->horizontalScrollBar()->value(), before + 50);
    EXPECT_EQ(current(), "mg13");
}

TEST_F(LoomViewTest, SpaceAndDragPanFromAnywhere)
{
    show(plan::vanNetwork());
    m_view->setCurrentTask("mg13");
    m_view->resetZoom();
    const int before = m_view->horizontalScrollBar()->value();
    const QPoint from = middleOf("mg13");
    QTest::keyPress(m_view.get(), Qt::Key_Space);
    QTest::mousePress(m_view->viewport(), Qt::LeftButton, {}, from);
    QTest::mouseMove(m_view->viewport(), from + QPoint(40, 0));
    QTest::mouseRelease(m_view->viewport(), Qt::LeftButton, {}, from + QPoint(40, 0));
    QTest::keyRelease(m_view.get(), Qt::Key_Space);
    EXPECT_EQ(m_view->horizontalScrollBar()->value(), before - 40);
}

// Mouse
// --------------------------------------------------------------------------------------------

TEST_F(LoomViewTest, ClickSelectsAndClickOnNothingClears)
{
    QSignalSpy changed(m_view.get(), &LoomView::currentTaskChanged);
    click(middleOf("a2"));
    EXPECT_EQ(current(), "a2");
    click(m_view->viewport()->rect().bottomLeft() + QPoint(3, -3));
    EXPECT_EQ(current(), QString());
    ASSERT_EQ(changed.size(), 2);
    EXPECT_EQ(changed[0][0], "a2");
    EXPECT_EQ(changed[1][0], QString());
}

TEST_F(LoomViewTest, DoubleClickOpens)
{
    QSignalSpy opened(m_view.get(), &LoomView::taskActivated);
    QTest::mouseDClick(m_view->viewport(), Qt::LeftButton, {}, middleOf("a2"));
    ASSERT_EQ(opened.size(), 1);
    EXPECT_EQ(opened[0][0], "a2");
}

TEST_F(LoomViewTest, DraggingFromAHousingsRightEndLinks)
{
    QSignalSpy linked(m_view.get(), &LoomView::linkRequested);
    QTest::mousePress(m_view->viewport(), Qt::LeftButton, {}, rightEndOf("b1"));
    QTest::mouseMove(m_view->viewport(), middleOf("a3"));
    EXPECT_TRUE(m_view->isLinking());
    QTest::mouseRelease(m_view->viewport(), Qt::LeftButton, {}, middleOf("a3"));
    ASSERT_EQ(linked.size(), 1);
    EXPECT_EQ(linked[0], (QList<QVariant>{"b1", "a3"}));
    EXPECT_FALSE(m_view->isLinking());
}

TEST_F(LoomViewTest, DroppingALinkOnNothingLinksNothing)
{
    QSignalSpy linked(m_view.get(), &LoomView::linkRequested);
    const QPoint nowhere = m_view->viewport()->rect().bottomLeft() + QPoint(3, -3);
    QTest::mousePress(m_view->viewport(), Qt::LeftButton, {}, rightEndOf("b1"));
    QTest::mouseMove(m_view->viewport(), nowhere);
    QTest::mouseRelease(m_view->viewport(), Qt::LeftButton, {}, nowhere);
    EXPECT_EQ(linked.size(), 0);
    EXPECT_FALSE(m_view->isLinking());
}

TEST_F(LoomViewTest, ClickOnAWireSelectsItAndDeleteUnlinksIt)
{
    QSignalSpy unlinked(m_view.get(), &LoomView::unlinkRequested);
    const QRect from = m_view->taskRect(indexOf("a1"));
    const QRect to = m_view->taskRect(indexOf("a2"));
    click({(from.right() + to.left()) / 2, from.center().y()});
    ASSERT_TRUE(m_view->currentWire());
    press(Qt::Key_Delete);
    ASSERT_EQ(unlinked.size(), 1);
    EXPECT_EQ(unlinked[0], (QList<QVariant>{"a1", "a2"}));
}

TEST_F(LoomViewTest, HoverTellsTheNeeds)
{
    const QPoint at = middleOf("b2");
    QHelpEvent help(QEvent::ToolTip, at, m_view->viewport()->mapToGlobal(at));
    QApplication::sendEvent(m_view->viewport(), &help);
    const QString text = QToolTip::text();
    EXPECT_TRUE(text.contains("Coupling machined"));
    EXPECT_TRUE(text.contains("part coupling blank (no offer taken yet)"));
    EXPECT_TRUE(text.contains("task Drain tank"));
    EXPECT_TRUE(text.contains("missing"));
    EXPECT_TRUE(text.contains("met"));
    QToolTip::hideText();
}

TEST_F(LoomViewTest, HoverTellsWhatAWireJoins)
{
    const QRect from = m_view->taskRect(indexOf("a1"));
    const QRect to = m_view->taskRect(indexOf("a2"));
    const QPoint at((from.right() + to.left()) / 2, from.center().y());
    QHelpEvent help(QEvent::ToolTip, at, m_view->viewport()->mapToGlobal(at));
    QApplication::sendEvent(m_view->viewport(), &help);
    EXPECT_EQ(QToolTip::text(), "Engine out waits on Drain tank, which is done");
    QToolTip::hideText();
}

TEST_F(LoomViewTest, WhatPeopleWroteIsNoMarkup)
{
    const QString text =
        LoomWords::toolTip(m_view->network(), indexOf("a3"), m_view->description(indexOf("a3")));
    EXPECT_TRUE(text.contains("Sell &lt;engine&gt;"));
}

// Network
// ------------------------------------------------------------------------------------------

TEST_F(LoomViewTest, KeepsTheSelectionByKeyWhenTheNetworkChanges)
{
    m_view->setCurrentTask("b1");
    Network more = smallNetwork();
    more.tasks.insert(more.tasks.begin(), task("a0", "Photos", "papers"));
    for (Task &at : more.tasks) {
        for (std::size_t &before : at.after)
            ++before;
    }
    m_view->setNetwork(more, {});
    EXPECT_EQ(current(), "b1");
    QSignalSpy changed(m_view.get(), &LoomView::currentTaskChanged);
    Network fewer{{task("a1", "Drain tank", "old drivetrain")}};
    m_view->setNetwork(fewer, {});
    EXPECT_EQ(current(), QString());
    ASSERT_EQ(changed.size(), 1);
    EXPECT_EQ(changed[0][0], QString());
}

TEST_F(LoomViewTest, TeachesWhenEmpty)
{
    QSignalSpy added(m_view.get(), &LoomView::addRequested);
    m_view->setNetwork({}, {});
    const QImage picture = m_view->viewport()->grab().toImage();
    bool written = false;
    for (int y = 0; y < picture.height() && !written; ++y) {
        for (int x = 0; x < picture.width() && !written; ++x)
            written = picture.pixelColor(x, y) != LoomColours::light().paper;
    }
    EXPECT_TRUE(written);
    for (const Qt::Key key : {Qt::Key_Right, Qt::Key_L, Qt::Key_D, Qt::Key_F, Qt::Key_W,
                              Qt::Key_Return, Qt::Key_Delete, Qt::Key_0, Qt::Key_Plus})
        press(key);
    press(Qt::Key_N);
    EXPECT_EQ(added.size(), 1);
}

TEST_F(LoomViewTest, OrangeAppearsOnlyWithHighVoltage)
{
    const auto orangePixels = [&] {
        const QImage picture = m_view->grab().toImage();
        int count = 0;
        for (int y = 0; y < picture.height(); ++y) {
            for (int x = 0; x < picture.width(); ++x) {
                const QColor pixel = picture.pixelColor(x, y);
                count += pixel.saturation() > 120 && pixel.hue() > 5 && pixel.hue() < 40 ? 1 : 0;
            }
        }
        return count;
    };
    EXPECT_EQ(orangePixels(), 0);
    Network hot = smallNetwork();
    hot.tasks[1].highVoltage = true;
    m_view->setNetwork(hot, {});
    EXPECT_GT(orangePixels(), 0);
}

TEST_F(LoomViewTest, PaintsAtEveryZoomInBothColours)
{
    show(plan::vanNetwork());
    m_view->setCurrentTask("zz05");
    for (const LoomColours &colours : {LoomColours::light(), LoomColours::dark()}) {
        m_view->setColours(colours);
        for (const double zoom : {0.05, 0.2, 0.4, 0.6, 1.0, 2.5}) {
            m_view->setZoom(zoom);
            EXPECT_FALSE(m_view->grab().isNull());
        }
    }
}

// Accessibility
// ------------------------------------------------------------------------------------

TEST_F(LoomViewTest, IsAListOfTasksForAScreenReader)
{
    QAccessibleInterface *list = QAccessible::queryAccessibleInterface(m_view.get());
    ASSERT_NE(list, nullptr);
    EXPECT_EQ(list->role(), QAccessible::List);
    EXPECT_EQ(list->text(QAccessible::Name), "Build order");
    ASSERT_EQ(list->childCount(), 5);
    QAccessibleInterface *coupling = list->child(4);
    ASSERT_NE(coupling, nullptr);
    EXPECT_TRUE(coupling->isValid());
    EXPECT_EQ(coupling->role(), QAccessible::ListItem);
    EXPECT_EQ(coupling->text(QAccessible::Name), "Coupling machined");
    EXPECT_TRUE(coupling->text(QAccessible::Description)
                    .startsWith("waits: task Measure bell face, part coupling blank"));
    EXPECT_TRUE(list->child(0)->text(QAccessible::Description).startsWith("done"));
    EXPECT_TRUE(list->child(1)->text(QAccessible::Description).startsWith("can start now"));
    EXPECT_EQ(coupling->parent(), list);
    EXPECT_EQ(list->indexOfChild(coupling), 4);
    const QRect rect = coupling->rect();
    EXPECT_EQ(list->childAt(rect.center().x(), rect.center().y()), coupling);
}

TEST_F(LoomViewTest, TellsAScreenReaderWhatIsSelected)
{
    QAccessibleInterface *list = QAccessible::queryAccessibleInterface(m_view.get());
    m_view->setCurrentTask("b2");
    EXPECT_TRUE(list->child(4)->state().selected);
    EXPECT_FALSE(list->child(3)->state().selected);
    EXPECT_EQ(list->text(QAccessible::Description),
              "Coupling machined: waits: task Measure bell face, part coupling blank; motor");
    press(Qt::Key_L);
    EXPECT_EQ(list->text(QAccessible::Description),
              "link from Coupling machined: choose the task that waits on it");
}

TEST_F(LoomViewTest, AScreenReaderCanOpenATask)
{
    QSignalSpy opened(m_view.get(), &LoomView::taskActivated);
    QAccessibleInterface *list = QAccessible::queryAccessibleInterface(m_view.get());
    QAccessibleActionInterface *actions = list->child(2)->actionInterface();
    ASSERT_NE(actions, nullptr);
    EXPECT_TRUE(actions->actionNames().contains(QAccessibleActionInterface::pressAction()));
    actions->doAction(QAccessibleActionInterface::pressAction());
    ASSERT_EQ(opened.size(), 1);
    EXPECT_EQ(opened[0][0], "a3");
    EXPECT_EQ(current(), "a3");
}

TEST_F(LoomViewTest, ItemsOfTasksThatAreGoneAreInvalid)
{
    QAccessible::setActive(true);
    QAccessibleInterface *list = QAccessible::queryAccessibleInterface(m_view.get());
    ASSERT_NE(list->child(4), nullptr);
    m_view->setNetwork(Network{{task("a1", "Drain tank", "old drivetrain")}}, {});
    EXPECT_EQ(list->childCount(), 1);
    EXPECT_EQ(list->child(4), nullptr);
    EXPECT_EQ(list->child(0)->text(QAccessible::Name), "Drain tank");
}

TEST_F(LoomViewTest, LegendIsSpoken)
{
    const LoomPainter painter(m_view->font().family(), LoomColours::light());
    const QString text = LoomLegend(painter, m_view->network(), m_view->loom()).text();
    EXPECT_TRUE(text.contains("solid: done"));
    EXPECT_TRUE(text.contains("dashed: waits"));
    EXPECT_FALSE(text.contains("HV"));
}

} // namespace

} // namespace ohmwright::ui
