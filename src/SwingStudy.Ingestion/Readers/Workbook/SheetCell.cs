using System.Globalization;
using ExcelDataReader;

namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>One cell of a sheet.</summary>
/// <param name="Text">Its text, numbers with a point and dates in ISO 8601.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Number">Number or serial.</param>
internal readonly record struct SheetCell(string Text, CellKind Kind, double Number)
{
    /// <summary>Days between the two epochs.</summary>
    private const double DaysTo1904 = 1462;

    /// <summary>1 March 1900 in days from 30 December 1899.</summary>
    private const double FirstOfMarch1900 = 61;

    /// <summary>Nothing.</summary>
    public static SheetCell Empty { get; } = new("", CellKind.Empty, double.NaN);

    /// <summary>The cell at which the reader stands, in its current row.</summary>
    public static SheetCell Of(IExcelDataReader reader, int column, WorkbookParts parts)
    {
        if (parts.Faulty.Count > 0 && parts.Faulty.TryGetValue((reader.Name, reader.Depth, column), out var fault))
            return new(fault, CellKind.Error, double.NaN);
        return reader.GetValue(column) switch
        {
            null => Empty,
            string text => text.Length == 0 ? Empty : new(text, CellKind.Text, double.NaN),
            bool truth => new(truth ? "true" : "false", CellKind.Boolean, double.NaN),
            DateTime time => OfTime(time, Serial(time, parts.Epoch1904)),
            TimeSpan span => OfTime(DateTime.FromOADate(0) + span, span.TotalDays),
            IFormattable number => OfNumber(Convert.ToDouble(number, CultureInfo.InvariantCulture)),
            var other => new(other.ToString() ?? "", CellKind.Text, double.NaN),
        };
    }

    private static SheetCell OfNumber(double number) => new(number.ToString("R", CultureInfo.InvariantCulture), CellKind.Number, number);

    private static SheetCell OfTime(DateTime time, double serial)
    {
        var seconds = time.Millisecond == 0 ? "HH':'mm':'ss" : "HH':'mm':'ss'.'fff";
        var form = serial is >= 0 and < 1 ? seconds : time.TimeOfDay == TimeSpan.Zero ? "yyyy'-'MM'-'dd" : "yyyy'-'MM'-'dd' '" + seconds;
        return new(time.ToString(form, CultureInfo.InvariantCulture), CellKind.Date, serial);
    }

    /// <summary>The serial as it stands in the file: day 1 is 1900-01-01, and behind the 29 February that 1900 did not have all days are one higher.</summary>
    private static double Serial(DateTime time, bool epoch1904)
    {
        var days = time.ToOADate();
        return epoch1904 ? days - DaysTo1904 : days < FirstOfMarch1900 ? days - 1 : days;
    }
}
