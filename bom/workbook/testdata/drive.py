"""Does by hand, in a spreadsheet program without a window, what a buyer does with the sheet
Buy: sorts and filters it as it is protected, lifts the protection, does both again, saves.

usage: drive.py FROM.xlsx TO.xlsx PROFILE. Says a line for each act."""

import os
import subprocess
import sys
import time

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.sheet import TableFilterField
from com.sun.star.sheet.FilterOperator import EQUAL
from com.sun.star.table import TableSortField

source, target, profile = sys.argv[1:4]
WHAT, KEYS = 1, 17  # columns: what an item is, and the hidden keys


def named(name, value):
    p = PropertyValue()
    p.Name, p.Value = name, value
    return p


pipe = "pipe,name=drive%d" % os.getpid()
office = subprocess.Popen(
    ["soffice", "-env:UserInstallation=file://" + profile, "--headless", "--norestore", "--accept=" + pipe + ";urp;"],
    stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
try:
    here = uno.getComponentContext()
    resolver = here.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", here)
    for _ in range(120):
        try:
            there = resolver.resolve("uno:" + pipe + ";urp;StarOffice.ComponentContext")
            break
        except Exception:
            time.sleep(0.5)
    desktop = there.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", there)
    book = desktop.loadComponentFromURL("file://" + source, "_blank", 0, (named("Hidden", True),))
    buy = book.Sheets.getByName("Buy")
    head = next(r for r in range(60) if buy.getCellByPosition(WHAT, r).String == "Item and what it is")
    last = head
    while not buy.getCellByPosition(0, last + 1).String.startswith("Bought besides"):
        last += 1

    def column(n):
        return [buy.getCellByPosition(n, r).String for r in range(head + 1, last + 1)]

    def sort():
        field = TableSortField()
        field.Field, field.IsAscending = WHAT, True
        before = column(KEYS)
        buy.getCellRangeByPosition(0, head, KEYS, last).sort((
            named("SortFields", uno.Any("[]com.sun.star.table.TableSortField", (field,))), named("ContainsHeader", True)))
        return "sorted" if column(KEYS) != before else "not sorted"

    def filter():
        """Chooses one shop at the head's button."""
        table = book.getPropertyValue("UnnamedDatabaseRanges").getByTable(0)
        shop = buy.getCellByPosition(0, last).String
        field = TableFilterField()
        field.Field, field.Operator, field.IsNumeric, field.StringValue = 0, EQUAL, False, shop
        how = table.getFilterDescriptor()
        how.setFilterFields((field,))
        how.ContainsHeader = True
        table.refresh()
        shown = [buy.getCellByPosition(0, r).String for r in range(head + 1, last + 1) if buy.Rows.getByIndex(r).IsVisible]
        return "filtered" if shown and set(shown) == {shop} and len(shown) == column(0).count(shop) else "not filtered"

    print("protected:", buy.isProtected())
    print("under protection:", sort() + ",", filter())
    buy.unprotect("")
    print("protected:", buy.isProtected())
    print("without:", sort() + ",", filter())
    book.storeToURL("file://" + target, (named("FilterName", "Calc MS Excel 2007 XML"),))
    book.close(True)
    try:
        desktop.terminate()
    except Exception:
        pass
    office.wait(30)
finally:
    if office.poll() is None:
        office.kill()
