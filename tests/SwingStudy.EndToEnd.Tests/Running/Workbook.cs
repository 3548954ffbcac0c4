using System.IO.Compression;
using System.Text;

namespace SwingStudy.EndToEnd.Tests.Running;

/// <summary>Writes the least that is a workbook: one sheet of Office Open XML (ECMA-376).</summary>
internal static class Workbook
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Packages = "http://schemas.openxmlformats.org/package/2006";

    /// <summary>A text cell.</summary>
    public static string Text(string text) => $"""<c t="inlineStr"><is><t>{text}</t></is></c>""";

    /// <summary>A number; with <paramref name="asDate"/> shown as a date.</summary>
    public static string Number(string number, bool asDate = false) => $"""<c s="{(asDate ? 1 : 0)}"><v>{number}</v></c>""";

    /// <summary>The bytes of a workbook whose sheet holds these rows of cells.</summary>
    public static byte[] Of(params IEnumerable<string>[] rows) =>
        Of(rows.Select(row => $"<row>{string.Concat(row)}</row>"));

    /// <summary>The bytes of a workbook whose sheet holds these row elements; they are written one by one.</summary>
    public static byte[] Of(IEnumerable<string> rows)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            Write(zip, "[Content_Types].xml", [$"""<Types xmlns="{Packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>"""]);
            Write(zip, "_rels/.rels", [$"""<Relationships xmlns="{Packages}/relationships"><Relationship Id="rId1" Type="{Relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>"""]);
            Write(zip, "xl/workbook.xml", [$"""<workbook xmlns="{Main}" xmlns:r="{Relations}"><sheets><sheet name="Shots" sheetId="1" r:id="rId1"/></sheets></workbook>"""]);
            Write(zip, "xl/_rels/workbook.xml.rels", [$"""<Relationships xmlns="{Packages}/relationships"><Relationship Id="rId1" Type="{Relations}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="{Relations}/styles" Target="styles.xml"/></Relationships>"""]);
            Write(zip, "xl/styles.xml", [$"""<styleSheet xmlns="{Main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>"""]);
            Write(zip, "xl/worksheets/sheet1.xml", [$"""<worksheet xmlns="{Main}"><sheetData>""", .. rows, "</sheetData></worksheet>"]);
        }

        return bytes.ToArray();
    }

    private static void Write(ZipArchive zip, string name, IEnumerable<string> parts)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false));
        writer.Write("""<?xml version="1.0" encoding="UTF-8" standalone="yes"?>""");
        foreach (var part in parts)
            writer.Write(part);
    }
}
