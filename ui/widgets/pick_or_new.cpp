// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/pick_or_new.h"

#include "ui/shell/theme.h"
#include "ui/widgets/overlay_list.h"

#include <QEvent>
#include <QFocusEvent>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace ohmwright::ui {

namespace {

// Without accents and case, so that "muller" finds "Müller".
QString folded(const QString &text)
{
    QString plain;
    for (const QChar c : text.normalized(QString::NormalizationForm_KD)) {
        if (c.category() != QChar::Mark_NonSpacing)
            plain += c;
    }
    return plain.simplified().toCaseFolded();
}

bool aWordStartsWith(const QString &name, const QString &typed)
{
    for (qsizetype at = name.indexOf(typed); at >= 0; at = name.indexOf(typed, at + 1)) {
        if (at == 0 || !name.at(at - 1).isLetterOrNumber())
            return true;
    }
    return false;
}

} // namespace

PickOrNew::PickOrNew(const Theme &theme, QWidget *parent)
    : QLineEdit(parent), m_theme(theme), m_list(new OverlayList(theme, *this, tr("Known names")))
{
    connect(this, &QLineEdit::textEdited, this, [this] { offer(false); });
    connect(m_list, &OverlayList::picked, this, &PickOrNew::take);
    connect(m_list, &OverlayList::highlighted, this, &PickOrNew::describe);
    connect(this, &QLineEdit::textChanged, this, [this] {
        const int room =
            isNew() && !m_knownOnly ? fontMetrics().horizontalAdvance(tr("new")) + 10 : 0;
        setTextMargins(0, 0, room, 0);
    });
}

PickOrNew::~PickOrNew()
{
    delete m_list;
}

void PickOrNew::setKnown(std::vector<KnownName> known)
{
    m_known = std::move(known);
    update();
}

void PickOrNew::setKey(const QString &key)
{
    const auto found = std::find_if(m_known.begin(), m_known.end(),
                                    [&](const KnownName &name) { return name.key == key; });
    m_key = found == m_known.end() ? QString() : key;
    m_settledName = found == m_known.end() ? QString() : found->name;
    setText(m_settledName);
}

void PickOrNew::setNewName(const QString &name)
{
    m_key.clear();
    m_settledName = name.trimmed();
    setText(m_settledName);
}

const KnownName *PickOrNew::knownAs(const QString &name) const
{
    const QString wanted = folded(name);
    const auto found = std::find_if(m_known.begin(), m_known.end(), [&](const KnownName &known) {
        return folded(known.name) == wanted;
    });
    return found == m_known.end() ? nullptr : &*found;
}

QString PickOrNew::keyNow() const
{
    if (!m_key.isEmpty() && folded(text()) == folded(m_settledName))
        return m_key;
    const KnownName *known = name().isEmpty() ? nullptr : knownAs(text());
    return known ? known->key : QString();
}

bool PickOrNew::isNew() const
{
    return !name().isEmpty() && !knownAs(text());
}

void PickOrNew::offer(bool whatever)
{
    const QString typed = folded(text());
    if (typed.isEmpty() && !whatever) {
        m_list->close();
        return;
    }
    std::vector<OverlayRow> rows;
    m_offeredKeys.clear();
    int best = -1;
    const bool all = whatever && (typed.isEmpty() || !m_key.isEmpty());
    for (const KnownName &known : m_known) {
        const QString name = folded(known.name);
        if (!all && !name.contains(typed))
            continue;
        const int row = static_cast<int>(rows.size());
        if (all ? known.key == m_key : name == typed || (best < 0 && aWordStartsWith(name, typed)))
            best = row;
        rows.push_back({known.name, known.detail, {}, false, false});
        m_offeredKeys.push_back(known.key);
    }
    if (isNew() && !m_knownOnly) {
        rows.push_back({tr("new: %1").arg(name()), {}, QStringLiteral("add"), false, false});
        m_offeredKeys.emplace_back();
        if (best < 0)
            best = static_cast<int>(rows.size()) - 1;
    }
    m_list->showRows(std::move(rows), best);
    describe(best);
}

void PickOrNew::describe(int row)
{
    if (m_list->isOpen() && row >= 0)
        setAccessibleDescription(
            tr("Enter takes: %1").arg(m_list->rows().at(static_cast<std::size_t>(row)).text));
}

void PickOrNew::take(int row)
{
    const QString key = m_offeredKeys.at(static_cast<std::size_t>(row));
    m_list->close();
    if (key.isEmpty()) {
        settle({}, name());
        return;
    }
    const auto found = std::find_if(m_known.begin(), m_known.end(),
                                    [&](const KnownName &known) { return known.key == key; });
    settle(key, found->name);
}

void PickOrNew::settle(const QString &key, const QString &name)
{
    const bool same = key == m_key && name == m_settledName;
    m_key = key;
    m_settledName = name;
    if (text() != name)
        setText(name);
    update();
    if (same)
        return;
    if (!key.isEmpty())
        emit chosen(key);
    else if (name.isEmpty())
        emit emptied();
    else
        emit newName(name);
}

void PickOrNew::settleTyped()
{
    // two known names may read the same: keep the one that was picked
    if (!m_key.isEmpty() && name() == m_settledName)
        return;
    if (const KnownName *known = knownAs(text()))
        settle(known->key, known->name);
    else
        settle({}, name());
}

bool PickOrNew::event(QEvent *event)
{
    if (event->type() == QEvent::ShortcutOverride && m_list->isOpen() &&
        static_cast<QKeyEvent *>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    // Tab never arrives as a key press: it is taken for moving the focus before that
    if (event->type() == QEvent::KeyPress) {
        const auto *key = static_cast<QKeyEvent *>(event);
        if (key->key() == Qt::Key_Tab && m_list->currentRow() >= 0)
            take(m_list->currentRow());
    }
    return QLineEdit::event(event);
}

void PickOrNew::keyPressEvent(QKeyEvent *event)
{
    if (m_list->isOpen()) {
        if (m_list->step(event->key()))
            return;
        const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
        if (enter && m_list->currentRow() >= 0) {
            take(m_list->currentRow());
            return;
        }
        if (event->key() == Qt::Key_Escape) {
            m_list->close();
            return;
        }
    } else if (event->key() == Qt::Key_Down) {
        offer(true);
        return;
    } else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        settleTyped();
    }
    QLineEdit::keyPressEvent(event);
}

void PickOrNew::focusOutEvent(QFocusEvent *event)
{
    QLineEdit::focusOutEvent(event);
    m_list->close();
    if (event->reason() != Qt::ActiveWindowFocusReason && event->reason() != Qt::PopupFocusReason)
        settleTyped();
}

void PickOrNew::paintEvent(QPaintEvent *event)
{
    QLineEdit::paintEvent(event);
    if (!isNew() || m_knownOnly)
        return;
    QPainter painter(this);
    painter.setFont(m_theme.font(Lettering::Small));
    painter.setPen(m_theme.tokens().mute);
    painter.drawText(rect().adjusted(0, 0, -10, 0), Qt::AlignRight | Qt::AlignVCenter, tr("new"));
}

} // namespace ohmwright::ui
