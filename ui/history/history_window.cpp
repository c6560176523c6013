// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/history_window.h"

#include "ui/history/history_model.h"
#include "ui/parts/detail_section.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/section_title.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

constexpr QSize kSize(880, 620);
constexpr int kWhenWidth = 120;
constexpr int kEditWidth = 300;

} // namespace

HistoryWindow::HistoryWindow(Book &book, const Theme &theme, QWidget *parent)
    : QWidget(parent, Qt::Window), m_book(book), m_model(new HistoryModel(this)),
      m_title(new SectionTitle(theme, tr("History"), TitleLevel::Page)),
      m_whole(new QPushButton(tr("Of the &whole book"))), m_view(new QTableView),
      m_edit(makeWords(theme, {}, Lettering::Strong)), m_detail(makeWords(theme, {}))
{
    setBackgroundRole(QPalette::Window);
    // with large letters not beyond the screen
    resize(kSize.boundedTo(screen()->availableSize() * 0.9));
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(20, 14, 20, 14);
    column->setSpacing(10);
    auto *head = new QHBoxLayout;
    head->addWidget(m_title, 1);
    head->addWidget(m_whole);
    column->addLayout(head);

    auto *parts = new QSplitter(Qt::Vertical);
    parts->setChildrenCollapsible(false);
    m_view->setModel(m_model);
    m_view->setAccessibleName(tr("Edits, newest first"));
    auto *delegate = new DraftedTableDelegate(theme, this);
    delegate->dress(*m_view, true);
    m_view->horizontalHeader()->resizeSection(HistoryModel::When, kWhenWidth);
    m_view->horizontalHeader()->resizeSection(HistoryModel::Edit, kEditWidth);
    m_view->horizontalHeader()->setStretchLastSection(true);
    parts->addWidget(m_view);

    auto *below = new QWidget;
    auto *told = new QVBoxLayout(below);
    told->setContentsMargins(0, 10, 12, 0);
    told->setSpacing(6);
    told->addWidget(m_edit);
    m_detail->setTextInteractionFlags(Qt::TextSelectableByMouse);
    told->addWidget(m_detail);
    told->addStretch(1);
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    // a long one is scrolled by keys too
    scroll->setFocusPolicy(Qt::StrongFocus);
    scroll->setAccessibleName(tr("What the edit changed"));
    scroll->setWidget(below);
    parts->addWidget(scroll);
    parts->setSizes({300, 220});
    column->addWidget(parts, 1);

    connect(m_view->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &HistoryWindow::showDetail);
    connect(m_whole, &QPushButton::clicked, this, &HistoryWindow::showWhole);
    // an edit must not wait for the history of it
    m_soon.setSingleShot(true);
    connect(&m_soon, &QTimer::timeout, this, &HistoryWindow::read);
    connect(&book, &Book::changed, this, [this] {
        m_behind = true;
        if (isVisible())
            m_soon.start(0);
    });
    setFocusProxy(m_view);
}

void HistoryWindow::showWhole()
{
    m_of.reset();
    come();
}

void HistoryWindow::showOf(const RecordRef &record)
{
    m_of = record;
    come();
}

QString HistoryWindow::detail() const
{
    return m_detail->text();
}

void HistoryWindow::come()
{
    m_behind = true;
    if (isVisible())
        read();
    show();
    raise();
    activateWindow();
    m_view->setFocus(Qt::OtherFocusReason);
}

void HistoryWindow::read()
{
    m_behind = false;
    if (m_of) {
        const RecordKind *kind = recordKind(m_of->table);
        if (kind && kind->has(m_book.records(), m_of->id))
            m_of->name = kind->name(m_book.records(), m_of->id);
    }
    const QModelIndex current = m_view->currentIndex();
    const std::int64_t chosen = current.isValid() ? m_model->step(current.row()).step.number : 0;
    const Outcome done = m_model->read(m_book, m_of);
    m_whole->setVisible(m_of.has_value());
    const QString of = m_of ? m_of->name : m_book.records().build().title;
    m_title->setRemark(of);
    setWindowTitle(tr("History of %1").arg(of));
    if (!done) {
        m_edit->setText(tr("The history cannot be told."));
        m_detail->setText(done.error().sentence);
        return;
    }
    m_view->setCurrentIndex(m_model->index(std::max(m_model->rowOf(chosen), 0), 0));
    showDetail();
}

void HistoryWindow::showDetail()
{
    const QModelIndex current = m_view->currentIndex();
    if (!current.isValid()) {
        m_edit->setText(m_of ? tr("Nothing of it was changed since the book began.")
                             : tr("Nothing was changed since the book began."));
        m_detail->clear();
        return;
    }
    const StepChange &step = m_model->step(current.row());
    m_edit->setText(step.step.what);
    m_detail->setText(changesInFull(step, !m_of));
}

void HistoryWindow::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_behind)
        read();
}

void HistoryWindow::hideEvent(QHideEvent *event)
{
    QWidget::hideEvent(event);
    m_model->forget();
    m_behind = true;
}

void HistoryWindow::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Escape) {
        close();
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace ohmwright::ui
