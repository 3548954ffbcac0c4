using System.IO.Compression;
using System.Security;
using System.Text;

namespace SwingStudy.Ingestion.Tests.Readers.Workbook;

/// <summary>Writes small workbooks part by part (ECMA-376), so that a case can hold what no writing library offers.</summary>
internal sealed class WorkbookFile
{
    private readonly List<(string Name, StringBuilder Rows)> _sheets = [];

    public bool Epoch1904 { get; init; }

    /// <summary>Adds a sheet of rows; a null row is left out, a cell is an XML element made by the methods below.</summary>
    public WorkbookFile Sheet(string name, params string[]?[] rows)
    {
        var text = new StringBuilder();
        for (var row = 0; row < rows.Length; row++)
        {
            if (rows[row] is not { } cells)
                continue;
            text.Append($"<row r=\"{row + 1}\">");
            for (var column = 0; column < cells.Length; column++)
                text.Append(cells[column].Replace("@", $"{(char)('A' + column)}{row + 1}", StringComparison.Ordinal));
            text.Append("</row>");
        }

        _sheets.Add((name, text));
        return this;
    }

    public static string Text(string text) => $"<c r=\"@\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{SecurityElement.Escape(text)}</t></is></c>";

    public static string Number(string number) => $"<c r=\"@\"><v>{number}</v></c>";

    public static string Date(string serial) => $"<c r=\"@\" s=\"1\"><v>{serial}</v></c>";

    public static string Time(string serial) => $"<c r=\"@\" s=\"2\"><v>{serial}</v></c>";

    public static string Error(string error) => $"<c r=\"@\" t=\"e\"><v>{error}</v></c>";

    public static string Formula(string formula, string? value) => $"<c r=\"@\"><f>{formula}</f>{(value is null ? "" : $"<v>{value}</v>")}</c>";

    public static string[] Texts(params string[] texts) => [.. texts.Select(Text)];

    public byte[] Bytes()
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Part(zip, "[Content_Types].xml", "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/></Types>");
            Part(zip, "_rels/.rels", "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"rId1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
            var names = string.Concat(_sheets.Select((sheet, i) => $"<sheet name=\"{sheet.Name}\" sheetId=\"{i + 1}\" r:id=\"rId{i + 1}\"/>"));
            Part(zip, "xl/workbook.xml", $"<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\">{(Epoch1904 ? "<workbookPr date1904=\"1\"/>" : "")}<sheets>{names}</sheets></workbook>");
            var relations = string.Concat(_sheets.Select((_, i) => $"<Relationship Id=\"rId{i + 1}\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\" Target=\"worksheets/sheet{i + 1}.xml\"/>"));
            Part(zip, "xl/_rels/workbook.xml.rels", $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">{relations}<Relationship Id=\"rIdS\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles\" Target=\"styles.xml\"/></Relationships>");
            Part(zip, "xl/styles.xml", "<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><fonts count=\"1\"><font/></fonts><fills count=\"1\"><fill/></fills><borders count=\"1\"><border/></borders><cellStyleXfs count=\"1\"><xf numFmtId=\"0\"/></cellStyleXfs><cellXfs count=\"3\"><xf numFmtId=\"0\" xfId=\"0\"/><xf numFmtId=\"14\" applyNumberFormat=\"1\" xfId=\"0\"/><xf numFmtId=\"21\" applyNumberFormat=\"1\" xfId=\"0\"/></cellXfs></styleSheet>");
            for (var i = 0; i < _sheets.Count; i++)
                Part(zip, $"xl/worksheets/sheet{i + 1}.xml", $"<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>{_sheets[i].Rows}</sheetData></worksheet>");
        }

        return stream.ToArray();
    }

    private static void Part(ZipArchive zip, string name, string text)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write(text);
    }
}
