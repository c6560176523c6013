// SPDX-License-Identifier: GPL-3.0-or-later
// A line that takes a known name or a new one: seller, donor, circuit.
//
// While one types, known names that fit hang below, and last "new: …" with what was typed. What is
// highlighted is what Enter or Tab takes; arrows highlight another; Escape closes the list and
// keeps the text as typed. On leaving without the list a text equal to a known name, whatever its
// case or accents, is that name; any other is new. The right end of the line says "new" when it is.
#pragma once

#include <QLineEdit>
#include <QPointer>
#include <QString>

#include <vector>

namespace ohmwright::ui {

class OverlayList;
class Theme;

struct KnownName
{
    QString key;
    QString name;
    QString detail; // "dismantler, 3 parts"; may be empty
};

class PickOrNew : public QLineEdit
{
    Q_OBJECT

public:
    explicit PickOrNew(const Theme &theme, QWidget *parent = nullptr);
    ~PickOrNew() override;

    // In the order to offer them: the last used first.
    void setKnown(std::vector<KnownName> known);
    // Offers nothing new: a name that is not known stays as typed, for the reader to refuse.
    void setKnownOnly(bool only) { m_knownOnly = only; }
    // Shows a known name; an unknown key empties the line. Emits nothing.
    void setKey(const QString &key);
    // Shows a new name. Emits nothing.
    void setNewName(const QString &name);

    [[nodiscard]] QString key() const { return m_key; } // empty when new or empty
    // What the text stands for at this moment, also before the line is left.
    [[nodiscard]] QString keyNow() const;
    // True when the text stands for something that does not exist yet.
    [[nodiscard]] bool isNew() const;
    [[nodiscard]] QString name() const { return text().trimmed(); }

signals:
    // Once for each change of what the line stands for.
    void chosen(const QString &key);
    void newName(const QString &text);
    void emptied();

protected:
    bool event(QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;
    void paintEvent(QPaintEvent *event) override;

private:
    void offer(bool whatever);
    void take(int row);
    void settle(const QString &key, const QString &name);
    void settleTyped();
    void describe(int row);
    [[nodiscard]] const KnownName *knownAs(const QString &name) const;

    const Theme &m_theme;
    QPointer<OverlayList> m_list; // while open the window's child
    std::vector<KnownName> m_known;
    std::vector<QString> m_offeredKeys; // by row of the list; empty key for "new: …"
    QString m_key;
    QString m_settledName;
    bool m_knownOnly = false;
};

} // namespace ohmwright::ui
