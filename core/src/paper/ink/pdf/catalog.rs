//! What a PDF tells a reader beside its pages: how they are to be printed and called, and what the
//! file is, in the two ways of the standard.

use lopdf::{Dictionary, Object, Stream, dictionary};

use super::{DocInfo, MAKER};

/// Puts it into the catalog (ISO 32000-1, table 28).
pub(super) fn put(file: &mut lopdf::Document, info: &DocInfo) {
    let told = file.add_object(metadata(info));
    let catalog = file.catalog_mut().expect("the page writer makes a catalog");
    catalog.set("ViewerPreferences", wishes());
    catalog.set("PageLabels", labels());
    catalog.set("Lang", Object::string_literal("en"));
    catalog.set("Metadata", told);
}

/// True size on paper, and the title over the window instead of the file's name (table 150).
fn wishes() -> Dictionary {
    dictionary! {
        "PrintScaling" => "None",
        "DisplayDocTitle" => true,
    }
}

/// Pages are called by the numbers that stand on them: from 1 on, in decimals (table 159).
fn labels() -> Dictionary {
    let decimals = dictionary! { "S" => "D", "St" => 1 };
    dictionary! { "Nums" => vec![Object::from(0), decimals.into()] }
}

/// Title, maker and day as XMP (ISO 16684-1), uncompressed, so that whoever looks for it in the
/// bytes of a file finds it (ISO 32000-1, 14.3.2).
fn metadata(info: &DocInfo) -> Stream {
    let title = escaped(&info.title);
    let date = info.date.map_or_else(String::new, |date| {
        format!("<xmp:CreateDate>{date}</xmp:CreateDate>")
    });
    let packet = format!(
        "<?xpacket begin=\"\u{feff}\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n\
         <x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\
         <rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\
         <rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" \
         xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\">\
         <dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{title}</rdf:li></rdf:Alt></dc:title>\
         <xmp:CreatorTool>{MAKER}</xmp:CreatorTool>{date}\
         </rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>"
    );
    let about = dictionary! { "Type" => "Metadata", "Subtype" => "XML" };
    Stream::new(about, packet.into_bytes()).with_compression(false)
}

/// A text between the marks of XML; signs that XML 1.0 knows nothing of are left out.
fn escaped(text: &str) -> String {
    let mut plain = String::new();
    for sign in text.chars() {
        match sign {
            '&' => plain.push_str("&amp;"),
            '<' => plain.push_str("&lt;"),
            '>' => plain.push_str("&gt;"),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            sign => plain.push(sign),
        }
    }
    plain
}
