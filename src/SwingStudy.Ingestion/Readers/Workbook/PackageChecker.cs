using System.IO.Compression;
using System.Xml;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>Looks into the zip package of a workbook before anything parses it: its true size unpacked, its epoch, its cells without values.</summary>
internal static class PackageChecker
{
    private const int MostParts = 10_000;
    private static readonly XmlReaderSettings Safe = new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null };

    /// <summary>The parts, or why the package must not be parsed. The stream stays open.</summary>
    /// <exception cref="InvalidDataException">The zip is damaged.</exception>
    /// <exception cref="XmlException">A part is no well-formed XML.</exception>
    public static Outcome<WorkbookParts> Check(Stream stream, string file)
    {
        stream.Position = 0;
        using var zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
        if (zip.Entries.Count > MostParts || Unpacks(zip) is not true)
            return ReaderMessages.WorkbookBomb(file);
        if (zip.GetEntry("xl/workbook.xml") is not { } workbook)
            return zip.GetEntry("xl/workbook.bin") is null ? ReaderMessages.NoWorkbook(file) : WorkbookParts.None;
        var (epoch, sheets) = Sheets(workbook);
        var paths = zip.GetEntry("xl/_rels/workbook.xml.rels") is { } relations ? Relations(relations) : [];
        var faulty = new Dictionary<(string, int, int), string>();
        foreach (var (name, id) in sheets)
        {
            if (paths.TryGetValue(id, out var path) && zip.GetEntry(path) is { } sheet)
                FindFaulty(sheet, name, faulty);
        }

        return new WorkbookParts(epoch, faulty);
    }

    /// <summary>Unpacks all parts to nowhere: the sizes that a zip declares may be lies.</summary>
    private static bool Unpacks(ZipArchive zip)
    {
        const int small = 1 << 20;
        var total = 0L;
        var buffer = new byte[128 * 1024];
        foreach (var entry in zip.Entries)
        {
            using var part = entry.Open();
            var size = 0L;
            while (part.Read(buffer) is var count and > 0)
            {
                size += count;
                total += count;
                if (total > ReaderLimits.WorkbookBytes || (size > small && size > entry.CompressedLength * ReaderLimits.WorkbookRatio))
                    return false;
            }
        }

        return true;
    }

    private static (bool Epoch1904, List<(string Name, string Id)> Sheets) Sheets(ZipArchiveEntry workbook)
    {
        var epoch = false;
        List<(string, string)> sheets = [];
        using var stream = workbook.Open();
        using var xml = XmlReader.Create(stream, Safe);
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element)
                continue;
            if (xml.LocalName == "workbookPr")
                epoch = xml.GetAttribute("date1904") is "1" or "true" or "on";
            else if (xml.LocalName == "sheet")
                sheets.Add((xml.GetAttribute("name") ?? "", Attribute(xml, "id") ?? ""));
        }

        return (epoch, sheets);
    }

    private static Dictionary<string, string> Relations(ZipArchiveEntry relations)
    {
        var paths = new Dictionary<string, string>(StringComparer.Ordinal);
        using var stream = relations.Open();
        using var xml = XmlReader.Create(stream, Safe);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "Relationship" && xml.GetAttribute("Id") is { } id && xml.GetAttribute("Target") is { } target)
                paths[id] = target.StartsWith('/') ? target[1..] : "xl/" + target;
        }

        return paths;
    }

    /// <summary>The attribute of that local name in a namespace of its own (r:id), whose address differs between editions of the standard.</summary>
    private static string? Attribute(XmlReader xml, string localName)
    {
        string? value = null;
        for (var found = xml.MoveToFirstAttribute(); found; found = xml.MoveToNextAttribute())
        {
            if (xml.LocalName == localName && xml.Prefix.Length > 0)
                value = xml.Value;
        }

        xml.MoveToElement();
        return value;
    }

    private static void FindFaulty(ZipArchiveEntry sheet, string name, Dictionary<(string, int, int), string> faulty)
    {
        using var stream = sheet.Open();
        using var xml = XmlReader.Create(stream, Safe);
        (int Row, int Column)? cell = null;
        string? formula = null, value = null;
        var isError = false;
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "c")
            {
                cell = CellAddress.Parse(xml.GetAttribute("r"));
                isError = xml.GetAttribute("t") == "e";
                (formula, value) = (null, null);
            }
            else if (xml.NodeType == XmlNodeType.Element && xml.LocalName is "v" or "is")
            {
                value = TextInside(xml);
            }
            else if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "f")
            {
                formula = TextInside(xml);
            }
            else if (xml.NodeType == XmlNodeType.EndElement && xml.LocalName == "c" && cell is { } at)
            {
                if (isError)
                    faulty[(name, at.Row, at.Column)] = value ?? "#ERROR!";
                else if (formula is not null && value is null)
                    faulty[(name, at.Row, at.Column)] = "=" + formula;
            }
        }
    }

    /// <summary>The text of an element, as far as it begins with text; null for a value that is none.</summary>
    private static string? TextInside(XmlReader xml)
    {
        var empty = xml.LocalName == "f" ? "" : null;
        if (xml.IsEmptyElement || !xml.Read() || xml.NodeType == XmlNodeType.EndElement)
            return empty;
        return xml.NodeType == XmlNodeType.Text ? xml.Value : "";
    }
}
