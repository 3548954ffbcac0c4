using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace SwingStudy.App.Demo;

/// <summary>A small workbook with merged title cells, as Office Open XML (ECMA-376): the same cells always give the same bytes.</summary>
internal sealed class SpreadsheetFile
{
    private const string Head = """<?xml version="1.0" encoding="UTF-8" standalone="yes"?>""";
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Packages = "http://schemas.openxmlformats.org/package/2006";
    private static readonly DateTimeOffset Zipped = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

    private readonly List<(string Name, StringBuilder Rows, List<string> Merged)> _sheets = [];

    /// <summary>Starts a sheet; rows that follow belong to it.</summary>
    public void AddSheet(string name) => _sheets.Add((name, new(), []));

    /// <summary>Merges a range, such as <c>A1:F1</c>.</summary>
    public void Merge(string range) => _sheets[^1].Merged.Add(range);

    /// <summary>Writes a row of the newest sheet; numbers must rise.</summary>
    public void AddRow(int number, params ReadOnlySpan<SpreadsheetCell> cells)
    {
        var rows = _sheets[^1].Rows;
        rows.Append(CultureInfo.InvariantCulture, $"<row r=\"{number}\">");
        foreach (var cell in cells)
        {
            if (cell.Text is { } text)
                rows.Append(CultureInfo.InvariantCulture, $"<c r=\"{cell.Column}{number}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{SecurityElement.Escape(text)}</t></is></c>");
            else
                rows.Append(CultureInfo.InvariantCulture, $"<c r=\"{cell.Column}{number}\" s=\"{(int)cell.Look}\"><v>{cell.Number:R}</v></c>");
        }

        rows.Append("</row>");
    }

    /// <summary>The whole file.</summary>
    public byte[] ToBytes()
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            var numbers = Enumerable.Range(1, _sheets.Count).ToList();
            Write(zip, "[Content_Types].xml", $"""
                <Types xmlns="{Packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>{string.Concat(numbers.Select(n => $"""<Override PartName="/xl/worksheets/sheet{n}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>"""))}</Types>
                """);
            Write(zip, "_rels/.rels", $"""<Relationships xmlns="{Packages}/relationships"><Relationship Id="rId1" Type="{Relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>""");
            Write(zip, "xl/workbook.xml", $"""
                <workbook xmlns="{Main}" xmlns:r="{Relations}"><sheets>{string.Concat(numbers.Select(n => $"""<sheet name="{_sheets[n - 1].Name}" sheetId="{n}" r:id="rId{n}"/>"""))}</sheets></workbook>
                """);
            Write(zip, "xl/_rels/workbook.xml.rels", $"""
                <Relationships xmlns="{Packages}/relationships">{string.Concat(numbers.Select(n => $"""<Relationship Id="rId{n}" Type="{Relations}/worksheet" Target="worksheets/sheet{n}.xml"/>"""))}<Relationship Id="rId{_sheets.Count + 1}" Type="{Relations}/styles" Target="styles.xml"/></Relationships>
                """);
            Write(zip, "xl/styles.xml", $"""
                <styleSheet xmlns="{Main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3"><xf/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="20" applyNumberFormat="1"/></cellXfs></styleSheet>
                """);
            for (var i = 0; i < _sheets.Count; i++)
            {
                var (_, rows, merged) = _sheets[i];
                var merges = merged.Count == 0
                    ? ""
                    : $"<mergeCells count=\"{merged.Count}\">{string.Concat(merged.Select(range => $"<mergeCell ref=\"{range}\"/>"))}</mergeCells>";
                Write(zip, $"xl/worksheets/sheet{i + 1}.xml", $"<worksheet xmlns=\"{Main}\"><sheetData>{rows}</sheetData>{merges}</worksheet>");
            }
        }

        return bytes.ToArray();
    }

    private static void Write(ZipArchive zip, string name, string xml)
    {
        var entry = zip.CreateEntry(name);
        entry.LastWriteTime = Zipped;
        using var stream = entry.Open();
        stream.Write(Encoding.UTF8.GetBytes(Head + xml));
    }
}
