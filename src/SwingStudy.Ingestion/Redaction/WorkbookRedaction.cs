using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>Cuts rows out of an Office Open XML workbook (ECMA-376): their cells go, and so do texts that no cell uses any more. Older binary
/// workbooks cannot be cut.</summary>
internal static class WorkbookRedaction
{
    private const string SharedPath = "xl/sharedStrings.xml";
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static readonly XNamespace Document = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static readonly XNamespace Package = "http://schemas.openxmlformats.org/package/2006/relationships";
    private static readonly DateTimeOffset Fixed = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static RedactedFile Cut(byte[] content, string? sheet, PersonRecords records, PersonTexts person)
    {
        if (!content.AsSpan().StartsWith("PK"u8))
            return records.Starts.Count > 0 || FileTexts.Name(content, person) ? RedactedFile.Whole : RedactedFile.Untouched;
        if (records.Starts.Count == 0 && !FileTexts.Name(content, person))
            return RedactedFile.Untouched;
        var parts = Read(content);
        var sheets = parts.Where(part => part.Key.StartsWith("xl/worksheets/", StringComparison.Ordinal) && part.Key.EndsWith(".xml", StringComparison.Ordinal))
            .ToDictionary(part => part.Key, part => Parse(part.Value), StringComparer.Ordinal);
        var mapped = sheet is null ? null : PathOf(parts, sheet);
        var shared = parts.TryGetValue(SharedPath, out var bytes) ? Parse(bytes) : null;
        var texts = shared?.Root!.Elements(Main + "si").Select(item => string.Concat(item.Descendants(Main + "t").Select(text => text.Value))).ToList() ?? [];
        foreach (var (path, xml) in sheets)
            CutSheet(xml, mapped is null || path == mapped ? records.Starts : new HashSet<int>(), texts, person, mapped is null);
        var used = sheets.Values.SelectMany(xml => xml.Descendants(Main + "c")).Where(IsShared).Select(Index).ToHashSet();
        var items = shared?.Root!.Elements(Main + "si").ToList() ?? [];
        for (var i = 0; i < items.Count; i++)
        {
            if (!used.Contains(i))
                items[i].ReplaceNodes(new XElement(Main + "t"));
        }

        foreach (var (path, xml) in sheets)
            parts[path] = Bytes(xml);
        if (shared is not null)
            parts[SharedPath] = Bytes(shared);
        var left = Write(parts, person);
        return FileTexts.Name(left, person) ? RedactedFile.Whole : new RedactedFile(RedactionKind.Cut, left, records.Starts);
    }

    /// <summary>The rows stand in the sheet that the mapping reads. Where it names none, the reader chose the one that fits, and its rows are told from
    /// those of other sheets by naming the person.</summary>
    private static void CutSheet(XDocument sheet, IReadOnlySet<int> rows, List<string> texts, PersonTexts person, bool mustName)
    {
        foreach (var row in sheet.Descendants(Main + "row").ToList())
        {
            var cells = row.Elements(Main + "c").ToList();
            var number = (int?)row.Attribute("r") ?? RowOf(cells);
            var isNamed = cells.Any(cell => TextOf(cell, texts) is { } text && (person.Is(text) || person.IsNamedIn(text)));
            if (rows.Contains(number) && (!mustName || isNamed))
            {
                row.Elements(Main + "c").Remove();
                continue;
            }

            foreach (var cell in cells.Where(cell => TextOf(cell, texts) is { } text && person.IsNamedIn(text)))
            {
                cell.Elements().Remove();
                cell.SetAttributeValue("t", null);
            }
        }
    }

    private static int RowOf(List<XElement> cells) =>
        cells.Count > 0 && (string?)cells[0].Attribute("r") is { } address ? int.Parse(address.AsSpan(address.IndexOfAnyInRange('0', '9')), NumberStyles.None, CultureInfo.InvariantCulture) : 0;

    private static bool IsShared(XElement cell) => (string?)cell.Attribute("t") == "s" && cell.Element(Main + "v") is not null;

    private static int Index(XElement cell) => int.Parse(cell.Element(Main + "v")!.Value, NumberStyles.None, CultureInfo.InvariantCulture);

    private static string? TextOf(XElement cell, List<string> texts) => (string?)cell.Attribute("t") switch
    {
        "s" when cell.Element(Main + "v") is not null && Index(cell) is var index && index < texts.Count => texts[index],
        "inlineStr" => string.Concat(cell.Descendants(Main + "t").Select(text => text.Value)),
        "str" => cell.Element(Main + "v")?.Value,
        _ => null,
    };

    private static string? PathOf(Dictionary<string, byte[]> parts, string sheet)
    {
        if (!parts.TryGetValue("xl/workbook.xml", out var workbook) || !parts.TryGetValue("xl/_rels/workbook.xml.rels", out var relations))
            return null;
        var id = Parse(workbook).Descendants(Main + "sheet").FirstOrDefault(element => string.Equals(((string?)element.Attribute("name"))?.Trim(), sheet.Trim(), StringComparison.OrdinalIgnoreCase))?.Attribute(Document + "id");
        var target = (string?)Parse(relations).Descendants(Package + "Relationship").FirstOrDefault(element => (string?)element.Attribute("Id") == (string?)id)?.Attribute("Target");
        return target is null ? null : target.StartsWith('/') ? target[1..] : "xl/" + target;
    }

    private static Dictionary<string, byte[]> Read(byte[] content)
    {
        var parts = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        using var zip = new ZipArchive(new MemoryStream(content, writable: false), ZipArchiveMode.Read);
        foreach (var entry in zip.Entries)
        {
            using var stream = entry.Open();
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            parts[entry.FullName] = bytes.ToArray();
        }

        return parts;
    }

    private static byte[] Write(Dictionary<string, byte[]> parts, PersonTexts person)
    {
        using var package = new MemoryStream();
        using (var zip = new ZipArchive(package, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in parts)
            {
                // Comments, drawings and properties may name a person too; what names one there is left out of the text.
                var isOther = !name.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal) && name != SharedPath && FileTexts.Name(content, person);
                var entry = zip.CreateEntry(name, CompressionLevel.Optimal);
                entry.LastWriteTime = Fixed;
                using var stream = entry.Open();
                stream.Write(isOther ? Encoding.UTF8.GetBytes(person.Without(Encoding.UTF8.GetString(content))) : content);
            }
        }

        return package.ToArray();
    }

    private static XDocument Parse(byte[] xml)
    {
        using var reader = XmlReader.Create(new MemoryStream(xml, writable: false), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null });
        return XDocument.Load(reader, LoadOptions.PreserveWhitespace);
    }

    private static byte[] Bytes(XDocument xml)
    {
        using var bytes = new MemoryStream();
        using (var writer = XmlWriter.Create(bytes, new XmlWriterSettings { Encoding = new UTF8Encoding(false) }))
            xml.Save(writer);
        return bytes.ToArray();
    }
}
